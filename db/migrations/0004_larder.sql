CREATE TABLE "lots" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"title" text NOT NULL,
	"crop" text,
	"recipe_id" uuid,
	"place_id" uuid NOT NULL,
	"made_on" date NOT NULL,
	"portion_grams" integer,
	"portion_ml" integer,
	"best_until" date,
	"note" text,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "lots_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "lots_one_origin" CHECK (num_nonnulls("lots"."crop", "lots"."recipe_id") <= 1),
	CONSTRAINT "lots_portion" CHECK (("lots"."portion_grams" is null or "lots"."portion_grams" > 0) and ("lots"."portion_ml" is null or "lots"."portion_ml" > 0)),
	CONSTRAINT "lots_best_until" CHECK ("lots"."best_until" is null or "lots"."best_until" >= "lots"."made_on")
);
--> statement-breakpoint
CREATE TABLE "movements" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"lot_id" uuid NOT NULL,
	"kind" text NOT NULL,
	"on_day" date NOT NULL,
	"grams" integer,
	"portions" integer,
	"amount" integer NOT NULL,
	"counted_in" text NOT NULL,
	"whole_amount" integer,
	"taken_for" text,
	"place_id" uuid,
	"to_place_id" uuid,
	"queued" boolean DEFAULT false NOT NULL,
	"at" text,
	"note" text,
	"recorded_at" timestamp with time zone DEFAULT clock_timestamp() NOT NULL,
	"undone_at" timestamp with time zone,
	CONSTRAINT "movements_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "movements_kind" CHECK ("movements"."kind" in ('put','take','give','compost','recount','move')),
	CONSTRAINT "movements_one_amount" CHECK (num_nonnulls("movements"."grams", "movements"."portions") = 1),
	CONSTRAINT "movements_amounts" CHECK (coalesce("movements"."grams", "movements"."portions") >= 0 and "movements"."amount" >= 0 and ("movements"."kind" = 'recount' or "movements"."amount" > 0)),
	CONSTRAINT "movements_counted_in" CHECK ("movements"."counted_in" in ('grams','portions')),
	CONSTRAINT "movements_whole" CHECK (("movements"."kind" = 'recount') = ("movements"."whole_amount" is not null) and ("movements"."whole_amount" is null or "movements"."whole_amount" >= "movements"."amount")),
	CONSTRAINT "movements_taken_for" CHECK (("movements"."kind" = 'take') = ("movements"."taken_for" is not null) and ("movements"."taken_for" is null or "movements"."taken_for" in ('eat','trim','batch'))),
	CONSTRAINT "movements_to_place" CHECK (("movements"."kind" = 'move') = ("movements"."to_place_id" is not null) and ("movements"."to_place_id" is null or "movements"."place_id" is null or "movements"."to_place_id" <> "movements"."place_id"))
);
--> statement-breakpoint
CREATE TABLE "places" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"name" text NOT NULL,
	"kind" text NOT NULL,
	"litres" numeric(9, 1),
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "places_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "places_kind" CHECK ("places"."kind" in ('fridge','freezer','shelf','cellar','clamp')),
	CONSTRAINT "places_litres" CHECK ("places"."litres" is null or "places"."litres" > 0)
);
--> statement-breakpoint
CREATE TABLE "supplies" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"kind" text NOT NULL,
	"name" text NOT NULL,
	"amount" integer NOT NULL,
	"unit" text NOT NULL,
	"holds_ml" integer,
	"best_until" date,
	"note" text,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "supplies_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "supplies_kind" CHECK ("supplies"."kind" in ('jar','lid','bag','box','vinegar','sugar','salt','yeast','spice','other')),
	CONSTRAINT "supplies_unit" CHECK ("supplies"."unit" in ('pieces','g','ml')),
	CONSTRAINT "supplies_amount" CHECK ("supplies"."amount" >= 0 and ("supplies"."holds_ml" is null or "supplies"."holds_ml" > 0))
);
--> statement-breakpoint
CREATE TABLE "stock_targets" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"recipe_id" uuid NOT NULL,
	"portions" integer NOT NULL,
	"by_day" date NOT NULL,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "stock_targets_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "stock_targets_portions" CHECK ("stock_targets"."portions" > 0)
);
--> statement-breakpoint
CREATE TABLE "wishes" (
	"household_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"recipe_id" uuid NOT NULL,
	"portions" integer NOT NULL,
	"by_words" text,
	"from_words" text,
	"recorded_at" timestamp with time zone DEFAULT now() NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "wishes_pk" PRIMARY KEY("household_id","id"),
	CONSTRAINT "wishes_portions" CHECK ("wishes"."portions" > 0)
);
--> statement-breakpoint
ALTER TABLE "household_stamps" ADD COLUMN "larder" uuid DEFAULT gen_random_uuid() NOT NULL;--> statement-breakpoint
ALTER TABLE "lots" ADD CONSTRAINT "lots_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "lots" ADD CONSTRAINT "lots_place_fk" FOREIGN KEY ("household_id","place_id") REFERENCES "public"."places"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "lots" ADD CONSTRAINT "lots_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "lots" ADD CONSTRAINT "lots_crop_fk" FOREIGN KEY ("crop") REFERENCES "public"."crops"("slug") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "movements" ADD CONSTRAINT "movements_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "movements" ADD CONSTRAINT "movements_lot_fk" FOREIGN KEY ("household_id","lot_id") REFERENCES "public"."lots"("household_id","id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "movements" ADD CONSTRAINT "movements_place_fk" FOREIGN KEY ("household_id","place_id") REFERENCES "public"."places"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "movements" ADD CONSTRAINT "movements_to_place_fk" FOREIGN KEY ("household_id","to_place_id") REFERENCES "public"."places"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "places" ADD CONSTRAINT "places_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "supplies" ADD CONSTRAINT "supplies_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "stock_targets" ADD CONSTRAINT "stock_targets_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "stock_targets" ADD CONSTRAINT "stock_targets_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "wishes" ADD CONSTRAINT "wishes_household_fk" FOREIGN KEY ("household_id") REFERENCES "public"."households"("household_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "wishes" ADD CONSTRAINT "wishes_recipe_fk" FOREIGN KEY ("household_id","recipe_id") REFERENCES "public"."recipes"("household_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "lots_place" ON "lots" USING btree ("household_id","place_id");--> statement-breakpoint
CREATE INDEX "lots_made" ON "lots" USING btree ("household_id","made_on");--> statement-breakpoint
CREATE INDEX "movements_lot" ON "movements" USING btree ("household_id","lot_id");--> statement-breakpoint
CREATE INDEX "stock_targets_recipe" ON "stock_targets" USING btree ("household_id","recipe_id");--> statement-breakpoint
CREATE INDEX "wishes_recipe" ON "wishes" USING btree ("household_id","recipe_id");