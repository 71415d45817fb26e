-- The tables as the migrations leave them. Written by npm run db:dump; change the schema and generate a migration, not this file.

create table batches (
  household_id uuid not null,
  id uuid not null,
  cook_day_id uuid not null,
  recipe_id uuid not null,
  on_day date not null,
  at timestamp with time zone not null,
  said jsonb not null,
  portions integer not null,
  portion_grams integer,
  weighed_grams integer,
  loss_grams integer not null,
  eaten_portions integer not null,
  given_portions integer not null,
  recorded_at timestamp with time zone default now() not null,
  undone_at timestamp with time zone,
  constraint batches_pk PRIMARY KEY (household_id, id),
  constraint batches_day_fk FOREIGN KEY (household_id, cook_day_id) REFERENCES cook_days(household_id, id),
  constraint batches_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint batches_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id),
  constraint batches_grams CHECK (((loss_grams >= 0) AND ((weighed_grams IS NULL) OR (weighed_grams = ((portions * COALESCE(portion_grams, 0)) + loss_grams))))),
  constraint batches_portions CHECK (((portions >= (eaten_portions + given_portions)) AND (eaten_portions >= 0) AND (given_portions >= 0)))
);
CREATE INDEX batches_day ON public.batches USING btree (household_id, cook_day_id);
alter table batches enable row level security;
alter table batches force row level security;
create policy batches_wall on batches for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER batches_stamp_delete AFTER DELETE ON public.batches REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER batches_stamp_insert AFTER INSERT ON public.batches REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER batches_stamp_update AFTER UPDATE ON public.batches REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
grant insert, select, update (undone_at) on batches to stillroom_app;

create table beds (
  household_id uuid not null,
  id uuid not null,
  name text not null,
  length_m numeric(9,2) not null,
  width_m numeric(9,2) not null,
  cover text not null,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint beds_pk PRIMARY KEY (household_id, id),
  constraint beds_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint beds_cover CHECK ((cover = ANY (ARRAY['open'::text, 'fleece'::text, 'cold-frame'::text, 'polytunnel'::text, 'greenhouse'::text, 'indoors'::text]))),
  constraint beds_size CHECK (((length_m > (0)::numeric) AND (width_m > (0)::numeric)))
);
alter table beds enable row level security;
alter table beds force row level security;
create policy beds_wall on beds for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER beds_stamp_delete AFTER DELETE ON public.beds REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER beds_stamp_insert AFTER INSERT ON public.beds REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER beds_stamp_update AFTER UPDATE ON public.beds REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
grant delete, insert, select, update on beds to stillroom_app;

create table book_recipes (
  id uuid not null,
  recipe jsonb not null,
  sources jsonb default '[]'::jsonb not null,
  constraint book_recipes_pkey PRIMARY KEY (id)
);
grant select on book_recipes to stillroom_app;

create table cook_day_dishes (
  household_id uuid not null,
  cook_day_id uuid not null,
  position integer not null,
  recipe_id uuid not null,
  batches integer not null,
  constraint cook_day_dishes_pk PRIMARY KEY (household_id, cook_day_id, "position"),
  constraint cook_day_dishes_day_fk FOREIGN KEY (household_id, cook_day_id) REFERENCES cook_days(household_id, id) ON DELETE CASCADE,
  constraint cook_day_dishes_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint cook_day_dishes_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id),
  constraint cook_day_dishes_batches CHECK ((batches > 0))
);
alter table cook_day_dishes enable row level security;
alter table cook_day_dishes force row level security;
create policy cook_day_dishes_wall on cook_day_dishes for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER cook_day_dishes_stamp_delete AFTER DELETE ON public.cook_day_dishes REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER cook_day_dishes_stamp_insert AFTER INSERT ON public.cook_day_dishes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER cook_day_dishes_stamp_update AFTER UPDATE ON public.cook_day_dishes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on cook_day_dishes to stillroom_app;

create table cook_days (
  household_id uuid not null,
  id uuid not null,
  on_day date not null,
  starts_at text not null,
  ends_by text,
  cooks integer not null,
  kitchen jsonb not null,
  unavailable jsonb not null,
  title text,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint cook_days_pk PRIMARY KEY (household_id, id),
  constraint cook_days_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint cook_days_clock CHECK (((starts_at ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'::text) AND ((ends_by IS NULL) OR (ends_by ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'::text)))),
  constraint cook_days_cooks CHECK (((cooks >= 1) AND (cooks <= 6)))
);
CREATE INDEX cook_days_on ON public.cook_days USING btree (household_id, on_day);
alter table cook_days enable row level security;
alter table cook_days force row level security;
create policy cook_days_wall on cook_days for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER cook_days_stamp_delete AFTER DELETE ON public.cook_days REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER cook_days_stamp_insert AFTER INSERT ON public.cook_days REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER cook_days_stamp_update AFTER UPDATE ON public.cook_days REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on cook_days to stillroom_app;

create table crops (
  slug text not null,
  facts jsonb not null,
  constraint crops_pkey PRIMARY KEY (slug)
);
grant select on crops to stillroom_app;

create table day_marks (
  household_id uuid not null,
  id uuid not null,
  cook_day_id uuid not null,
  kind text not null,
  dish uuid,
  step text,
  load integer,
  oven integer,
  line integer,
  stage integer,
  at timestamp with time zone not null,
  at_said boolean not null,
  recorded_at timestamp with time zone default now() not null,
  undone_at timestamp with time zone,
  constraint day_marks_pk PRIMARY KEY (household_id, id),
  constraint day_marks_day_fk FOREIGN KEY (household_id, cook_day_id) REFERENCES cook_days(household_id, id) ON DELETE CASCADE,
  constraint day_marks_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint day_marks_dish CHECK (((kind = ANY (ARRAY['begun'::text, 'finished'::text])) = (dish IS NULL))),
  constraint day_marks_kind CHECK ((kind = ANY (ARRAY['begun'::text, 'finished'::text, 'started'::text, 'done'::text, 'ticked'::text, 'cooled'::text, 'reheated'::text, 'discarded'::text]))),
  constraint day_marks_line CHECK (((kind = 'ticked'::text) = (line IS NOT NULL))),
  constraint day_marks_stage CHECK (((kind = 'cooled'::text) = (stage IS NOT NULL))),
  constraint day_marks_step CHECK (((kind = ANY (ARRAY['started'::text, 'done'::text])) = (step IS NOT NULL)))
);
CREATE INDEX day_marks_day ON public.day_marks USING btree (household_id, cook_day_id);
alter table day_marks enable row level security;
alter table day_marks force row level security;
create policy day_marks_wall on day_marks for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER day_marks_stamp_delete AFTER DELETE ON public.day_marks REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER day_marks_stamp_insert AFTER INSERT ON public.day_marks REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER day_marks_stamp_update AFTER UPDATE ON public.day_marks REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
grant insert, select, update (undone_at) on day_marks to stillroom_app;

create table day_plans (
  household_id uuid not null,
  id uuid not null,
  cook_day_id uuid not null,
  position integer not null,
  said jsonb not null,
  at timestamp with time zone not null,
  day_version integer not null,
  day jsonb not null,
  steps jsonb not null,
  broken_off jsonb not null,
  told jsonb not null,
  recorded_at timestamp with time zone default now() not null,
  undone_at timestamp with time zone,
  constraint day_plans_pk PRIMARY KEY (household_id, id),
  constraint day_plans_day_fk FOREIGN KEY (household_id, cook_day_id) REFERENCES cook_days(household_id, id) ON DELETE CASCADE,
  constraint day_plans_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE
);
CREATE UNIQUE INDEX day_plans_position ON public.day_plans USING btree (household_id, cook_day_id, "position");
alter table day_plans enable row level security;
alter table day_plans force row level security;
create policy day_plans_wall on day_plans for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER day_plans_stamp_delete AFTER DELETE ON public.day_plans REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER day_plans_stamp_insert AFTER INSERT ON public.day_plans REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER day_plans_stamp_update AFTER UPDATE ON public.day_plans REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
grant insert, select, update (undone_at) on day_plans to stillroom_app;

create table household_stamps (
  household_id uuid not null,
  garden uuid default gen_random_uuid() not null,
  kitchen uuid default gen_random_uuid() not null,
  weather uuid default gen_random_uuid() not null,
  larder uuid default gen_random_uuid() not null,
  counter uuid default gen_random_uuid() not null,
  constraint household_stamps_pk PRIMARY KEY (household_id),
  constraint household_stamps_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE
);
alter table household_stamps enable row level security;
alter table household_stamps force row level security;
create policy household_stamps_wall on household_stamps for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
grant delete, insert, select, update on household_stamps to stillroom_app;

create table households (
  household_id uuid not null,
  name text not null,
  zone text not null,
  latitude double precision not null,
  longitude double precision not null,
  altitude_m double precision not null,
  people integer not null,
  week_start text not null,
  units text not null,
  eats jsonb,
  glut_grams integer default 1000 not null,
  kitchen jsonb,
  cooks integer default 1 not null,
  placed boolean default false not null,
  normals jsonb,
  weather_attribution text,
  version integer default 1 not null,
  kitchen_min_per_week integer,
  away jsonb default '[]'::jsonb not null,
  avoids jsonb default '{"crops": [], "allergens": []}'::jsonb not null,
  constraint households_pk PRIMARY KEY (household_id),
  constraint households_cooks CHECK (((cooks >= 1) AND (cooks <= 6))),
  constraint households_glut CHECK ((glut_grams >= 0)),
  constraint households_kitchen_min CHECK (((kitchen_min_per_week IS NULL) OR (kitchen_min_per_week >= 0))),
  constraint households_people CHECK (((people >= 1) AND (people <= 60))),
  constraint households_place CHECK ((((latitude >= ('-90'::integer)::double precision) AND (latitude <= (90)::double precision)) AND ((longitude >= ('-180'::integer)::double precision) AND (longitude <= (180)::double precision)))),
  constraint households_units CHECK ((units = ANY (ARRAY['metric'::text, 'us'::text, 'imperial'::text]))),
  constraint households_week_start CHECK ((week_start = ANY (ARRAY['monday'::text, 'tuesday'::text, 'wednesday'::text, 'thursday'::text, 'friday'::text, 'saturday'::text, 'sunday'::text])))
);
alter table households enable row level security;
alter table households force row level security;
create policy households_wall on households for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER households_stamp_delete AFTER DELETE ON public.households REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('house');
CREATE TRIGGER households_stamp_insert AFTER INSERT ON public.households REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('house');
CREATE TRIGGER households_stamp_update AFTER UPDATE ON public.households REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('house');
grant delete, insert, select, update on households to stillroom_app;

create table lots (
  household_id uuid not null,
  id uuid not null,
  title text not null,
  crop text,
  recipe_id uuid,
  place_id uuid not null,
  made_on date not null,
  portion_grams integer,
  portion_ml integer,
  best_until date,
  note text,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint lots_pk PRIMARY KEY (household_id, id),
  constraint lots_crop_fk FOREIGN KEY (crop) REFERENCES crops(slug),
  constraint lots_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint lots_place_fk FOREIGN KEY (household_id, place_id) REFERENCES places(household_id, id),
  constraint lots_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id),
  constraint lots_best_until CHECK (((best_until IS NULL) OR (best_until >= made_on))),
  constraint lots_one_origin CHECK ((num_nonnulls(crop, recipe_id) <= 1)),
  constraint lots_portion CHECK ((((portion_grams IS NULL) OR (portion_grams > 0)) AND ((portion_ml IS NULL) OR (portion_ml > 0))))
);
CREATE INDEX lots_made ON public.lots USING btree (household_id, made_on);
CREATE INDEX lots_place ON public.lots USING btree (household_id, place_id);
alter table lots enable row level security;
alter table lots force row level security;
create policy lots_wall on lots for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER lots_keep_movements BEFORE DELETE ON public.lots FOR EACH ROW EXECUTE FUNCTION keep_moved_lot();
CREATE TRIGGER lots_stamp_delete AFTER DELETE ON public.lots REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER lots_stamp_insert AFTER INSERT ON public.lots REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER lots_stamp_update AFTER UPDATE ON public.lots REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
grant delete, insert, select, update on lots to stillroom_app;

create table movements (
  household_id uuid not null,
  id uuid not null,
  lot_id uuid not null,
  kind text not null,
  on_day date not null,
  grams integer,
  portions integer,
  amount integer not null,
  counted_in text not null,
  whole_amount integer,
  taken_for text,
  place_id uuid,
  to_place_id uuid,
  queued boolean default false not null,
  at text,
  note text,
  recorded_at timestamp with time zone default clock_timestamp() not null,
  undone_at timestamp with time zone,
  batch_id uuid,
  constraint movements_pk PRIMARY KEY (household_id, id),
  constraint movements_batch_fk FOREIGN KEY (household_id, batch_id) REFERENCES batches(household_id, id),
  constraint movements_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint movements_lot_fk FOREIGN KEY (household_id, lot_id) REFERENCES lots(household_id, id) ON DELETE CASCADE,
  constraint movements_place_fk FOREIGN KEY (household_id, place_id) REFERENCES places(household_id, id),
  constraint movements_to_place_fk FOREIGN KEY (household_id, to_place_id) REFERENCES places(household_id, id),
  constraint movements_amounts CHECK (((COALESCE(grams, portions) >= 0) AND (amount >= 0) AND ((kind = 'recount'::text) OR (amount > 0)))),
  constraint movements_counted_in CHECK ((counted_in = ANY (ARRAY['grams'::text, 'portions'::text]))),
  constraint movements_kind CHECK ((kind = ANY (ARRAY['put'::text, 'take'::text, 'give'::text, 'compost'::text, 'recount'::text, 'move'::text]))),
  constraint movements_one_amount CHECK ((num_nonnulls(grams, portions) = 1)),
  constraint movements_taken_for CHECK ((((kind = 'take'::text) = (taken_for IS NOT NULL)) AND ((taken_for IS NULL) OR (taken_for = ANY (ARRAY['eat'::text, 'trim'::text, 'batch'::text]))))),
  constraint movements_to_place CHECK ((((kind = 'move'::text) = (to_place_id IS NOT NULL)) AND ((to_place_id IS NULL) OR (place_id IS NULL) OR (to_place_id <> place_id)))),
  constraint movements_whole CHECK ((((kind = 'recount'::text) = (whole_amount IS NOT NULL)) AND ((whole_amount IS NULL) OR (whole_amount >= amount))))
);
CREATE INDEX movements_batch ON public.movements USING btree (household_id, batch_id);
CREATE INDEX movements_lot ON public.movements USING btree (household_id, lot_id);
alter table movements enable row level security;
alter table movements force row level security;
create policy movements_wall on movements for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER movements_stamp_delete AFTER DELETE ON public.movements REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER movements_stamp_insert AFTER INSERT ON public.movements REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER movements_stamp_update AFTER UPDATE ON public.movements REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
grant insert, select, update (undone_at) on movements to stillroom_app;

create table picks (
  household_id uuid not null,
  id uuid not null,
  sowing_id uuid not null,
  picked_on date not null,
  grams integer not null,
  pieces integer,
  recorded_at timestamp with time zone default now() not null,
  undone_at timestamp with time zone,
  constraint picks_pk PRIMARY KEY (household_id, id),
  constraint picks_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint picks_sowing_fk FOREIGN KEY (household_id, sowing_id) REFERENCES sowings(household_id, id) ON DELETE CASCADE,
  constraint picks_grams CHECK ((grams > 0)),
  constraint picks_pieces CHECK (((pieces IS NULL) OR (pieces > 0)))
);
CREATE INDEX picks_day ON public.picks USING btree (household_id, picked_on);
CREATE INDEX picks_sowing_day ON public.picks USING btree (household_id, sowing_id, picked_on);
alter table picks enable row level security;
alter table picks force row level security;
create policy picks_wall on picks for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER picks_stamp_delete AFTER DELETE ON public.picks REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER picks_stamp_insert AFTER INSERT ON public.picks REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER picks_stamp_update AFTER UPDATE ON public.picks REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
grant insert, select, update (undone_at) on picks to stillroom_app;

create table places (
  household_id uuid not null,
  id uuid not null,
  name text not null,
  kind text not null,
  litres numeric(9,1),
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint places_pk PRIMARY KEY (household_id, id),
  constraint places_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint places_kind CHECK ((kind = ANY (ARRAY['fridge'::text, 'freezer'::text, 'shelf'::text, 'cellar'::text, 'clamp'::text]))),
  constraint places_litres CHECK (((litres IS NULL) OR (litres > (0)::numeric)))
);
alter table places enable row level security;
alter table places force row level security;
create policy places_wall on places for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER places_stamp_delete AFTER DELETE ON public.places REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER places_stamp_insert AFTER INSERT ON public.places REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER places_stamp_update AFTER UPDATE ON public.places REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
grant delete, insert, select, update on places to stillroom_app;

create table plan_lines (
  household_id uuid not null,
  id uuid not null,
  week text not null,
  recipe_id uuid not null,
  batches integer not null,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint plan_lines_pk PRIMARY KEY (household_id, id),
  constraint plan_lines_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint plan_lines_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id),
  constraint plan_lines_batches CHECK ((batches > 0)),
  constraint plan_lines_week CHECK ((week ~ '^[0-9]{4}-W(0[1-9]|[1-4][0-9]|5[0-3])$'::text))
);
CREATE INDEX plan_lines_week ON public.plan_lines USING btree (household_id, week);
alter table plan_lines enable row level security;
alter table plan_lines force row level security;
create policy plan_lines_wall on plan_lines for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER plan_lines_stamp_delete AFTER DELETE ON public.plan_lines REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER plan_lines_stamp_insert AFTER INSERT ON public.plan_lines REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER plan_lines_stamp_update AFTER UPDATE ON public.plan_lines REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on plan_lines to stillroom_app;

create table recipe_parts (
  household_id uuid not null,
  recipe_id uuid not null,
  part_id uuid not null,
  constraint recipe_parts_pk PRIMARY KEY (household_id, recipe_id, part_id),
  constraint recipe_parts_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint recipe_parts_part_fk FOREIGN KEY (household_id, part_id) REFERENCES recipes(household_id, id),
  constraint recipe_parts_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id) ON DELETE CASCADE,
  constraint recipe_parts_not_itself CHECK ((recipe_id <> part_id))
);
alter table recipe_parts enable row level security;
alter table recipe_parts force row level security;
create policy recipe_parts_wall on recipe_parts for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER recipe_parts_stamp_delete AFTER DELETE ON public.recipe_parts REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER recipe_parts_stamp_insert AFTER INSERT ON public.recipe_parts REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER recipe_parts_stamp_update AFTER UPDATE ON public.recipe_parts REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on recipe_parts to stillroom_app;

create table recipes (
  household_id uuid not null,
  id uuid not null,
  title text not null,
  way text not null,
  makes_amount double precision not null,
  makes_unit text not null,
  process text,
  origin text default 'own'::text not null,
  body jsonb not null,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint recipes_pk PRIMARY KEY (household_id, id),
  constraint recipes_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint recipes_makes CHECK ((makes_amount > (0)::double precision)),
  constraint recipes_origin CHECK ((origin = ANY (ARRAY['book'::text, 'own'::text]))),
  constraint recipes_way CHECK ((way = ANY (ARRAY['eat'::text, 'cook'::text, 'freeze'::text, 'bottle'::text, 'dry'::text, 'pickle'::text, 'ferment'::text, 'store'::text, 'give'::text])))
);
alter table recipes enable row level security;
alter table recipes force row level security;
create policy recipes_wall on recipes for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER recipes_stamp_delete AFTER DELETE ON public.recipes REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER recipes_stamp_insert AFTER INSERT ON public.recipes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER recipes_stamp_update AFTER UPDATE ON public.recipes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on recipes to stillroom_app;

create table reference_rows (
  kind text not null,
  key text not null,
  facts jsonb not null,
  source text not null,
  constraint reference_rows_pk PRIMARY KEY (kind, key),
  constraint reference_rows_source CHECK ((source <> ''::text))
);
grant select on reference_rows to stillroom_app;

create table sightings (
  household_id uuid not null,
  id uuid not null,
  sowing_id uuid not null,
  stage text not null,
  seen_on date not null,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint sightings_pk PRIMARY KEY (household_id, id),
  constraint sightings_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint sightings_sowing_fk FOREIGN KEY (household_id, sowing_id) REFERENCES sowings(household_id, id) ON DELETE CASCADE,
  constraint sightings_stage CHECK ((stage = ANY (ARRAY['emerged'::text, 'planted-out'::text, 'flowering'::text, 'fruit-set'::text, 'first-pick'::text, 'finished'::text])))
);
CREATE INDEX sightings_sowing ON public.sightings USING btree (household_id, sowing_id);
alter table sightings enable row level security;
alter table sightings force row level security;
create policy sightings_wall on sightings for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER sightings_stamp_delete AFTER DELETE ON public.sightings REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER sightings_stamp_insert AFTER INSERT ON public.sightings REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER sightings_stamp_update AFTER UPDATE ON public.sightings REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
grant delete, insert, select, update on sightings to stillroom_app;

create table sources (
  id text not null,
  text text not null,
  licence text,
  constraint sources_pkey PRIMARY KEY (id)
);
grant select on sources to stillroom_app;

create table sowings (
  household_id uuid not null,
  id uuid not null,
  bed_id uuid not null,
  crop text not null,
  variety text,
  method text not null,
  sown_on date,
  planted_out_on date,
  row_m numeric(9,2),
  plants integer,
  area_m2 numeric(9,2),
  stands_since integer,
  note text,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  variety_days jsonb,
  constraint sowings_pk PRIMARY KEY (household_id, id),
  constraint sowings_bed_fk FOREIGN KEY (household_id, bed_id) REFERENCES beds(household_id, id),
  constraint sowings_crop_fk FOREIGN KEY (crop) REFERENCES crops(slug),
  constraint sowings_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint sowings_amounts CHECK ((COALESCE(row_m, (plants)::numeric, area_m2) > (0)::numeric)),
  constraint sowings_dated CHECK ((((method <> 'direct'::text) OR (sown_on IS NOT NULL)) AND ((method <> 'transplant'::text) OR (sown_on IS NOT NULL) OR (planted_out_on IS NOT NULL)))),
  constraint sowings_dates CHECK (((planted_out_on IS NULL) OR (sown_on IS NULL) OR (planted_out_on >= sown_on))),
  constraint sowings_method CHECK ((method = ANY (ARRAY['direct'::text, 'transplant'::text, 'established'::text]))),
  constraint sowings_one_amount CHECK ((num_nonnulls(row_m, plants, area_m2) = 1))
);
CREATE INDEX sowings_bed ON public.sowings USING btree (household_id, bed_id);
alter table sowings enable row level security;
alter table sowings force row level security;
create policy sowings_wall on sowings for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER sowings_keep_picks BEFORE DELETE ON public.sowings FOR EACH ROW EXECUTE FUNCTION keep_picked_sowing();
CREATE TRIGGER sowings_stamp_delete AFTER DELETE ON public.sowings REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER sowings_stamp_insert AFTER INSERT ON public.sowings REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
CREATE TRIGGER sowings_stamp_update AFTER UPDATE ON public.sowings REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('garden');
grant delete, insert, select, update on sowings to stillroom_app;

create table stock_targets (
  household_id uuid not null,
  id uuid not null,
  recipe_id uuid not null,
  portions integer not null,
  by_day date not null,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint stock_targets_pk PRIMARY KEY (household_id, id),
  constraint stock_targets_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint stock_targets_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id),
  constraint stock_targets_portions CHECK ((portions > 0))
);
CREATE INDEX stock_targets_recipe ON public.stock_targets USING btree (household_id, recipe_id);
alter table stock_targets enable row level security;
alter table stock_targets force row level security;
create policy stock_targets_wall on stock_targets for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER stock_targets_stamp_delete AFTER DELETE ON public.stock_targets REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER stock_targets_stamp_insert AFTER INSERT ON public.stock_targets REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER stock_targets_stamp_update AFTER UPDATE ON public.stock_targets REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on stock_targets to stillroom_app;

create table supplies (
  household_id uuid not null,
  id uuid not null,
  kind text not null,
  name text not null,
  amount integer not null,
  unit text not null,
  holds_ml integer,
  best_until date,
  note text,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint supplies_pk PRIMARY KEY (household_id, id),
  constraint supplies_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint supplies_amount CHECK (((amount >= 0) AND ((holds_ml IS NULL) OR (holds_ml > 0)))),
  constraint supplies_kind CHECK ((kind = ANY (ARRAY['jar'::text, 'lid'::text, 'bag'::text, 'box'::text, 'vinegar'::text, 'sugar'::text, 'salt'::text, 'yeast'::text, 'spice'::text, 'other'::text]))),
  constraint supplies_unit CHECK ((unit = ANY (ARRAY['pieces'::text, 'g'::text, 'ml'::text])))
);
alter table supplies enable row level security;
alter table supplies force row level security;
create policy supplies_wall on supplies for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER supplies_stamp_delete AFTER DELETE ON public.supplies REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER supplies_stamp_insert AFTER INSERT ON public.supplies REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
CREATE TRIGGER supplies_stamp_update AFTER UPDATE ON public.supplies REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('larder');
grant delete, insert, select, update on supplies to stillroom_app;

create table tastes (
  household_id uuid not null,
  recipe_id uuid not null,
  liking text not null,
  recorded_at timestamp with time zone default now() not null,
  constraint tastes_pk PRIMARY KEY (household_id, recipe_id),
  constraint tastes_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint tastes_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id) ON DELETE CASCADE,
  constraint tastes_liking CHECK ((liking = ANY (ARRAY['loved'::text, 'fine'::text, 'tired'::text, 'never'::text])))
);
alter table tastes enable row level security;
alter table tastes force row level security;
create policy tastes_wall on tastes for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER tastes_stamp_delete AFTER DELETE ON public.tastes REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER tastes_stamp_insert AFTER INSERT ON public.tastes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER tastes_stamp_update AFTER UPDATE ON public.tastes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on tastes to stillroom_app;

create table timers (
  household_id uuid not null,
  id uuid not null,
  cook_day_id uuid not null,
  label text not null,
  pot text,
  dish uuid,
  step text,
  load integer,
  minutes integer,
  clock text,
  ends_at timestamp with time zone not null,
  heard_at timestamp with time zone,
  stopped_at timestamp with time zone,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint timers_pk PRIMARY KEY (household_id, id),
  constraint timers_day_fk FOREIGN KEY (household_id, cook_day_id) REFERENCES cook_days(household_id, id) ON DELETE CASCADE,
  constraint timers_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint timers_said CHECK ((num_nonnulls(minutes, clock) <= 1))
);
CREATE INDEX timers_day ON public.timers USING btree (household_id, cook_day_id);
alter table timers enable row level security;
alter table timers force row level security;
create policy timers_wall on timers for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER timers_stamp_delete AFTER DELETE ON public.timers REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER timers_stamp_insert AFTER INSERT ON public.timers REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
CREATE TRIGGER timers_stamp_update AFTER UPDATE ON public.timers REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('counter');
grant delete, insert, select, update on timers to stillroom_app;

create table weather_days (
  household_id uuid not null,
  day date not null,
  tmax_tenths integer not null,
  tmin_tenths integer not null,
  constraint weather_days_pk PRIMARY KEY (household_id, day),
  constraint weather_days_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint weather_days_order CHECK ((tmax_tenths >= tmin_tenths))
);
alter table weather_days enable row level security;
alter table weather_days force row level security;
create policy weather_days_wall on weather_days for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER weather_days_stamp_delete AFTER DELETE ON public.weather_days REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('weather');
CREATE TRIGGER weather_days_stamp_insert AFTER INSERT ON public.weather_days REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('weather');
CREATE TRIGGER weather_days_stamp_update AFTER UPDATE ON public.weather_days REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('weather');
grant delete, insert, select, update on weather_days to stillroom_app;

create table wishes (
  household_id uuid not null,
  id uuid not null,
  recipe_id uuid not null,
  portions integer not null,
  by_words text,
  from_words text,
  recorded_at timestamp with time zone default now() not null,
  version integer default 1 not null,
  constraint wishes_pk PRIMARY KEY (household_id, id),
  constraint wishes_household_fk FOREIGN KEY (household_id) REFERENCES households(household_id) ON DELETE CASCADE,
  constraint wishes_recipe_fk FOREIGN KEY (household_id, recipe_id) REFERENCES recipes(household_id, id),
  constraint wishes_portions CHECK ((portions > 0))
);
CREATE INDEX wishes_recipe ON public.wishes USING btree (household_id, recipe_id);
alter table wishes enable row level security;
alter table wishes force row level security;
create policy wishes_wall on wishes for all to public
  using ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid))
  with check ((household_id = (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid));
CREATE TRIGGER wishes_stamp_delete AFTER DELETE ON public.wishes REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER wishes_stamp_insert AFTER INSERT ON public.wishes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
CREATE TRIGGER wishes_stamp_update AFTER UPDATE ON public.wishes REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp('kitchen');
grant delete, insert, select, update on wishes to stillroom_app;

CREATE OR REPLACE FUNCTION public.keep_moved_lot()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
BEGIN
  IF EXISTS (SELECT FROM movements WHERE household_id = OLD.household_id AND lot_id = OLD.id AND undone_at IS NULL)
     AND EXISTS (SELECT FROM households WHERE household_id = OLD.household_id) THEN
    RAISE EXCEPTION 'movements of this lot stand' USING ERRCODE = 'foreign_key_violation', CONSTRAINT = 'movements_lot_fk', TABLE = 'movements';
  END IF;
  RETURN OLD;
END
$function$;

CREATE OR REPLACE FUNCTION public.keep_picked_sowing()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
BEGIN
  IF EXISTS (SELECT FROM picks WHERE household_id = OLD.household_id AND sowing_id = OLD.id AND undone_at IS NULL)
     AND EXISTS (SELECT FROM households WHERE household_id = OLD.household_id) THEN
    RAISE EXCEPTION 'picks of this sowing stand' USING ERRCODE = 'foreign_key_violation', CONSTRAINT = 'picks_sowing_fk', TABLE = 'picks';
  END IF;
  RETURN OLD;
END
$function$;

CREATE OR REPLACE FUNCTION public.renew_stamp()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
BEGIN
  UPDATE household_stamps SET
    garden = CASE WHEN TG_ARGV[0] IN ('garden', 'house') THEN gen_random_uuid() ELSE garden END,
    kitchen = CASE WHEN TG_ARGV[0] IN ('kitchen', 'house') THEN gen_random_uuid() ELSE kitchen END,
    weather = CASE WHEN TG_ARGV[0] = 'weather' THEN gen_random_uuid() ELSE weather END,
    larder = CASE WHEN TG_ARGV[0] = 'larder' THEN gen_random_uuid() ELSE larder END,
    counter = CASE WHEN TG_ARGV[0] = 'counter' THEN gen_random_uuid() ELSE counter END
  WHERE household_id IN (SELECT household_id FROM changed);
  RETURN NULL;
END
$function$;

CREATE OR REPLACE PROCEDURE public.stamp_writes_to(IN household_table text, IN part text)
 LANGUAGE plpgsql
AS $procedure$
BEGIN
  EXECUTE format('CREATE TRIGGER %I AFTER INSERT ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp(%L)', household_table || '_stamp_insert', household_table, part);
  EXECUTE format('CREATE TRIGGER %I AFTER UPDATE ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp(%L)', household_table || '_stamp_update', household_table, part);
  EXECUTE format('CREATE TRIGGER %I AFTER DELETE ON %I REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp(%L)', household_table || '_stamp_delete', household_table, part);
END
$procedure$;
