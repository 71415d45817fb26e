CREATE TABLE "household_stamps" (
	"household_id" uuid NOT NULL,
	"garden" uuid DEFAULT gen_random_uuid() NOT NULL,
	"kitchen" uuid DEFAULT gen_random_uuid() NOT NULL,
	"weather" uuid DEFAULT gen_random_uuid() NOT NULL,
	CONSTRAINT "household_stamps_pk" PRIMARY KEY("household_id")
);
--> statement-breakpoint
ALTER TABLE "households" DROP CONSTRAINT "households_week_start";--> statement-breakpoint
ALTER TABLE "picks" DROP CONSTRAINT "picks_sowing_fk";
--> statement-breakpoint
ALTER TABLE "household_stamps" ADD CONSTRAINT "household_stamps_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "picks" ADD CONSTRAINT "picks_sowing_fk" FOREIGN KEY ("household_id","sowing_id") REFERENCES "public"."sowings"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "households" ADD CONSTRAINT "households_week_start" CHECK ("households"."week_start" in ('monday','tuesday','wednesday','thursday','friday','saturday','sunday'));