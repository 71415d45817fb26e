CREATE TABLE "beds" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"name" text NOT NULL,
	"length_m" numeric(9, 2) NOT NULL,
	"width_m" numeric(9, 2) NOT NULL,
	"cover" text NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "beds_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "beds_size" CHECK ("beds"."length_m" > 0 and "beds"."width_m" > 0),
	CONSTRAINT "beds_cover" CHECK ("beds"."cover" in ('open','fleece','cold-frame','polytunnel','greenhouse','indoors'))
);
--> statement-breakpoint
CREATE TABLE "cook_day_dishes" (
	"household_id" uuid NOT NULL,
	"cook_day_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"recipe_id" uuid NOT NULL,
	"batches" integer NOT NULL,
	CONSTRAINT "cook_day_dishes_pk" PRIMARY KEY("household_id","cook_day_id","position"),
	CONSTRAINT "cook_day_dishes_batches" CHECK ("cook_day_dishes"."batches" > 0)
);
--> statement-breakpoint
CREATE TABLE "cook_days" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"on_day" date NOT NULL,
	"starts_at" text NOT NULL,
	"ends_by" text,
	"cooks" integer NOT NULL,
	"kitchen" jsonb NOT NULL,
	"unavailable" jsonb NOT NULL,
	"title" text,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "cook_days_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "cook_days_cooks" CHECK ("cook_days"."cooks" between 1 and 6),
	CONSTRAINT "cook_days_clock" CHECK ("cook_days"."starts_at" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$' and ("cook_days"."ends_by" is null or "cook_days"."ends_by" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'))
);
--> statement-breakpoint
CREATE TABLE "households" (
	"household_id" uuid NOT NULL,
	"name" text NOT NULL,
	"zone" text NOT NULL,
	"latitude" double precision NOT NULL,
	"longitude" double precision NOT NULL,
	"altitude_m" double precision NOT NULL,
	"people" integer NOT NULL,
	"week_start" text NOT NULL,
	"units" text NOT NULL,
	"eats" jsonb,
	"glut_grams" integer DEFAULT 1000 NOT NULL,
	"kitchen" jsonb,
	"cooks" integer DEFAULT 1 NOT NULL,
	"placed" boolean DEFAULT false NOT NULL,
	"normals" jsonb,
	"weather_attribution" text,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "households_pk" PRIMARY KEY("household_id"),
	CONSTRAINT "households_place" CHECK ("households"."latitude" between -90 and 90 and "households"."longitude" between -180 and 180),
	CONSTRAINT "households_people" CHECK ("households"."people" between 1 and 60),
	CONSTRAINT "households_week_start" CHECK ("households"."week_start" in ('monday','sunday','saturday','friday')),
	CONSTRAINT "households_units" CHECK ("households"."units" in ('metric','us','imperial')),
	CONSTRAINT "households_glut" CHECK ("households"."glut_grams" >= 0),
	CONSTRAINT "households_cooks" CHECK ("households"."cooks" between 1 and 6)
);
--> statement-breakpoint
CREATE TABLE "weather_days" (
	"household_id" uuid NOT NULL,
	"day" date NOT NULL,
	"tmax_tenths" integer NOT NULL,
	"tmin_tenths" integer NOT NULL,
	CONSTRAINT "weather_days_pk" PRIMARY KEY("household_id","day"),
	CONSTRAINT "weather_days_order" CHECK ("weather_days"."tmax_tenths" >= "weather_days"."tmin_tenths")
);
--> statement-breakpoint
CREATE TABLE "plan_lines" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"week" text NOT NULL,
	"recipe_id" uuid NOT NULL,
	"batches" integer NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "plan_lines_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "plan_lines_week" CHECK ("plan_lines"."week" ~ '^[0-9]{4}-W(0[1-9]|[1-4][0-9]|5[0-3])$'),
	CONSTRAINT "plan_lines_batches" CHECK ("plan_lines"."batches" > 0)
);
--> statement-breakpoint
CREATE TABLE "recipe_parts" (
	"household_id" uuid NOT NULL,
	"recipe_id" uuid NOT NULL,
	"part_id" uuid NOT NULL,
	CONSTRAINT "recipe_parts_pk" PRIMARY KEY("household_id","recipe_id","part_id"),
	CONSTRAINT "recipe_parts_not_itself" CHECK ("recipe_parts"."recipe_id" <> "recipe_parts"."part_id")
);
--> statement-breakpoint
CREATE TABLE "recipes" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"title" text NOT NULL,
	"way" text NOT NULL,
	"makes_amount" double precision NOT NULL,
	"makes_unit" text NOT NULL,
	"process" text,
	"origin" text DEFAULT 'own' NOT NULL,
	"body" jsonb NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "recipes_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "recipes_way" CHECK ("recipes"."way" in ('eat','cook','freeze','bottle','dry','pickle','ferment','store','give')),
	CONSTRAINT "recipes_origin" CHECK ("recipes"."origin" in ('book','own')),
	CONSTRAINT "recipes_makes" CHECK ("recipes"."makes_amount" > 0)
);
--> statement-breakpoint
CREATE TABLE "book_recipes" (
	"id" uuid PRIMARY KEY NOT NULL,
	"recipe" jsonb NOT NULL,
	"sources" jsonb DEFAULT '[]'::jsonb NOT NULL
);
--> statement-breakpoint
CREATE TABLE "crops" (
	"slug" text PRIMARY KEY NOT NULL,
	"facts" jsonb NOT NULL
);
--> statement-breakpoint
CREATE TABLE "reference_rows" (
	"kind" text NOT NULL,
	"key" text NOT NULL,
	"facts" jsonb NOT NULL,
	"source" text NOT NULL,
	CONSTRAINT "reference_rows_pk" PRIMARY KEY("kind","key"),
	CONSTRAINT "reference_rows_source" CHECK ("reference_rows"."source" <> '')
);
--> statement-breakpoint
CREATE TABLE "sources" (
	"id" text PRIMARY KEY NOT NULL,
	"text" text NOT NULL,
	"licence" text
);
--> statement-breakpoint
CREATE TABLE "picks" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"sowing_id" uuid NOT NULL,
	"picked_on" date NOT NULL,
	"grams" integer NOT NULL,
	"pieces" integer,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"undone_at" timestamp with time zone,
	CONSTRAINT "picks_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "picks_grams" CHECK ("picks"."grams" > 0),
	CONSTRAINT "picks_pieces" CHECK ("picks"."pieces" is null or "picks"."pieces" > 0)
);
--> statement-breakpoint
CREATE TABLE "sightings" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"sowing_id" uuid NOT NULL,
	"stage" text NOT NULL,
	"seen_on" date NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "sightings_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "sightings_stage" CHECK ("sightings"."stage" in ('emerged','planted-out','flowering','fruit-set','first-pick','finished'))
);
--> statement-breakpoint
CREATE TABLE "sowings" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"bed_id" uuid NOT NULL,
	"crop" text NOT NULL,
	"variety" text,
	"method" text NOT NULL,
	"sown_on" date,
	"planted_out_on" date,
	"row_m" numeric(9, 2),
	"plants" integer,
	"area_m2" numeric(9, 2),
	"stands_since" integer,
	"note" text,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "sowings_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "sowings_method" CHECK ("sowings"."method" in ('direct','transplant','established')),
	CONSTRAINT "sowings_one_amount" CHECK (num_nonnulls("sowings"."row_m", "sowings"."plants", "sowings"."area_m2") = 1),
	CONSTRAINT "sowings_amounts" CHECK (coalesce("sowings"."row_m", "sowings"."plants", "sowings"."area_m2") > 0),
	CONSTRAINT "sowings_dates" CHECK ("sowings"."planted_out_on" is null or "sowings"."sown_on" is null or "sowings"."planted_out_on" >= "sowings"."sown_on"),
	CONSTRAINT "sowings_dated" CHECK (("sowings"."method" <> 'direct' or "sowings"."sown_on" is not null) and ("sowings"."method" <> 'transplant' or "sowings"."sown_on" is not null or "sowings"."planted_out_on" is not null))
);
--> statement-breakpoint
ALTER TABLE "beds" ADD CONSTRAINT "beds_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "cook_day_dishes" ADD CONSTRAINT "cook_day_dishes_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "cook_day_dishes" ADD CONSTRAINT "cook_day_dishes_day_fk" FOREIGN KEY ("household_id","cook_day_id") REFERENCES "public"."cook_days"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "cook_day_dishes" ADD CONSTRAINT "cook_day_dishes_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "cook_days" ADD CONSTRAINT "cook_days_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "weather_days" ADD CONSTRAINT "weather_days_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_lines" ADD CONSTRAINT "plan_lines_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_lines" ADD CONSTRAINT "plan_lines_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "recipe_parts" ADD CONSTRAINT "recipe_parts_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "recipe_parts" ADD CONSTRAINT "recipe_parts_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "recipe_parts" ADD CONSTRAINT "recipe_parts_part_fk" FOREIGN KEY ("household_id","part_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "recipes" ADD CONSTRAINT "recipes_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "picks" ADD CONSTRAINT "picks_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "picks" ADD CONSTRAINT "picks_sowing_fk" FOREIGN KEY ("household_id","sowing_id") REFERENCES "public"."sowings"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sightings" ADD CONSTRAINT "sightings_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sightings" ADD CONSTRAINT "sightings_sowing_fk" FOREIGN KEY ("household_id","sowing_id") REFERENCES "public"."sowings"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sowings" ADD CONSTRAINT "sowings_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sowings" ADD CONSTRAINT "sowings_bed_fk" FOREIGN KEY ("household_id","bed_id") REFERENCES "public"."beds"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sowings" ADD CONSTRAINT "sowings_crop_fk" FOREIGN KEY ("crop") REFERENCES "public"."crops"("slug") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "cook_days_on" ON "cook_days" USING btree ("household_id","on_day");--> statement-breakpoint
CREATE INDEX "plan_lines_week" ON "plan_lines" USING btree ("household_id","week");--> statement-breakpoint
CREATE INDEX "picks_sowing_day" ON "picks" USING btree ("household_id","sowing_id","picked_on");--> statement-breakpoint
CREATE INDEX "picks_day" ON "picks" USING btree ("household_id","picked_on");--> statement-breakpoint
CREATE INDEX "sightings_sowing" ON "sightings" USING btree ("household_id","sowing_id");--> statement-breakpoint
CREATE INDEX "sowings_bed" ON "sowings" USING btree ("household_id","bed_id");