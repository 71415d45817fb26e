-- The counter behind the wall between households, like every other table.
DO $$
DECLARE
  household_table text;
BEGIN
  FOREACH household_table IN ARRAY ARRAY['day_plans', 'day_marks', 'timers', 'batches'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', household_table);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', household_table);
    EXECUTE format(
      'CREATE POLICY %I ON %I USING (household_id = nullif(current_setting(''app.household'', true), '''')::uuid) WITH CHECK (household_id = nullif(current_setting(''app.household'', true), '''')::uuid)',
      household_table || '_wall', household_table
    );
  END LOOP;
END
$$;
--> statement-breakpoint
GRANT SELECT, INSERT, UPDATE, DELETE ON timers TO stillroom_app;
--> statement-breakpoint
-- A plan, a mark and a closed dish are written once. Undoing one sets undone_at; the row goes only with its cook day, or with its household.
GRANT SELECT, INSERT, UPDATE (undone_at) ON day_plans, day_marks, batches TO stillroom_app;
--> statement-breakpoint
-- The trigger's argument names the part: garden, kitchen, weather, larder, counter, or house for what both garden and kitchen rest on.
CREATE OR REPLACE FUNCTION renew_stamp() RETURNS trigger LANGUAGE plpgsql AS $$
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
$$;
--> statement-breakpoint
CALL stamp_writes_to('day_plans', 'counter');
--> statement-breakpoint
CALL stamp_writes_to('day_marks', 'counter');
--> statement-breakpoint
CALL stamp_writes_to('timers', 'counter');
--> statement-breakpoint
CALL stamp_writes_to('batches', 'counter');
