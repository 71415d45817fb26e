CREATE TABLE "tastes" (
	"household_id" uuid NOT NULL,
	"recipe_id" uuid NOT NULL,
	"liking" text NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "tastes_pk" PRIMARY KEY("household_id","recipe_id"),
	CONSTRAINT "tastes_liking" CHECK ("tastes"."liking" in ('loved','fine','tired','never'))
);
--> statement-breakpoint
ALTER TABLE "households" ADD COLUMN "kitchen_min_per_week" integer;--> statement-breakpoint
ALTER TABLE "households" ADD COLUMN "away" jsonb DEFAULT '[]'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "households" ADD COLUMN "avoids" jsonb DEFAULT '{"crops":[],"allergens":[]}'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "tastes" ADD CONSTRAINT "tastes_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tastes" ADD CONSTRAINT "tastes_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "households" ADD CONSTRAINT "households_kitchen_min" CHECK ("households"."kitchen_min_per_week" is null or "households"."kitchen_min_per_week" >= 0);