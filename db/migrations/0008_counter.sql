CREATE TABLE "batches" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"cook_day_id" uuid NOT NULL,
	"recipe_id" uuid NOT NULL,
	"on_day" date NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"said" jsonb NOT NULL,
	"portions" integer NOT NULL,
	"portion_grams" integer,
	"weighed_grams" integer,
	"loss_grams" integer NOT NULL,
	"eaten_portions" integer NOT NULL,
	"given_portions" integer NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"undone_at" timestamp with time zone,
	CONSTRAINT "batches_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "batches_portions" CHECK ("batches"."portions" >= "batches"."eaten_portions" + "batches"."given_portions" and "batches"."eaten_portions" >= 0 and "batches"."given_portions" >= 0),
	CONSTRAINT "batches_grams" CHECK ("batches"."loss_grams" >= 0 and ("batches"."weighed_grams" is null or "batches"."weighed_grams" = "batches"."portions" * coalesce("batches"."portion_grams", 0) + "batches"."loss_grams"))
);
--> statement-breakpoint
CREATE TABLE "day_marks" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"cook_day_id" uuid NOT NULL,
	"kind" text NOT NULL,
	"dish" uuid,
	"step" text,
	"load" integer,
	"oven" integer,
	"line" integer,
	"stage" integer,
	"at" timestamp with time zone NOT NULL,
	"at_said" boolean NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"undone_at" timestamp with time zone,
	CONSTRAINT "day_marks_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "day_marks_kind" CHECK ("day_marks"."kind" in ('begun','finished','started','done','ticked','cooled','reheated','discarded')),
	CONSTRAINT "day_marks_dish" CHECK (("day_marks"."kind" in ('begun','finished')) = ("day_marks"."dish" is null)),
	CONSTRAINT "day_marks_step" CHECK (("day_marks"."kind" in ('started','done')) = ("day_marks"."step" is not null)),
	CONSTRAINT "day_marks_line" CHECK (("day_marks"."kind" = 'ticked') = ("day_marks"."line" is not null)),
	CONSTRAINT "day_marks_stage" CHECK (("day_marks"."kind" = 'cooled') = ("day_marks"."stage" is not null))
);
--> statement-breakpoint
CREATE TABLE "day_plans" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"cook_day_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"said" jsonb NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"day_version" integer NOT NULL,
	"day" jsonb NOT NULL,
	"steps" jsonb NOT NULL,
	"broken_off" jsonb NOT NULL,
	"told" jsonb NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"undone_at" timestamp with time zone,
	CONSTRAINT "day_plans_pk" PRIMARY KEY("household_id","id")
);
--> statement-breakpoint
CREATE TABLE "timers" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"cook_day_id" uuid NOT NULL,
	"label" text NOT NULL,
	"pot" text,
	"dish" uuid,
	"step" text,
	"load" integer,
	"minutes" integer,
	"clock" text,
	"ends_at" timestamp with time zone NOT NULL,
	"heard_at" timestamp with time zone,
	"stopped_at" timestamp with time zone,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "timers_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "timers_said" CHECK (num_nonnulls("timers"."minutes", "timers"."clock") <= 1)
);
--> statement-breakpoint
ALTER TABLE "movements" ADD COLUMN "batch_id" uuid;--> statement-breakpoint
ALTER TABLE "household_stamps" ADD COLUMN "counter" uuid DEFAULT gen_random_uuid() NOT NULL;--> statement-breakpoint
ALTER TABLE "batches" ADD CONSTRAINT "batches_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "batches" ADD CONSTRAINT "batches_day_fk" FOREIGN KEY ("household_id","cook_day_id") REFERENCES "public"."cook_days"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "batches" ADD CONSTRAINT "batches_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "day_marks" ADD CONSTRAINT "day_marks_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "day_marks" ADD CONSTRAINT "day_marks_day_fk" FOREIGN KEY ("household_id","cook_day_id") REFERENCES "public"."cook_days"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "day_plans" ADD CONSTRAINT "day_plans_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "day_plans" ADD CONSTRAINT "day_plans_day_fk" FOREIGN KEY ("household_id","cook_day_id") REFERENCES "public"."cook_days"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "timers" ADD CONSTRAINT "timers_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "timers" ADD CONSTRAINT "timers_day_fk" FOREIGN KEY ("household_id","cook_day_id") REFERENCES "public"."cook_days"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "batches_day" ON "batches" USING btree ("household_id","cook_day_id");--> statement-breakpoint
CREATE INDEX "day_marks_day" ON "day_marks" USING btree ("household_id","cook_day_id");--> statement-breakpoint
CREATE UNIQUE INDEX "day_plans_position" ON "day_plans" USING btree ("household_id","cook_day_id","position");--> statement-breakpoint
CREATE INDEX "timers_day" ON "timers" USING btree ("household_id","cook_day_id");--> statement-breakpoint
ALTER TABLE "movements" ADD CONSTRAINT "movements_batch_fk" FOREIGN KEY ("household_id","batch_id") REFERENCES "public"."batches"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "movements_batch" ON "movements" USING btree ("household_id","batch_id");