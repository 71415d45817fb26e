-- Every write renews the stamp of what it changed, by whichever program it comes, so that what was reckoned before can be told from what still holds.
ALTER TABLE household_stamps ENABLE ROW LEVEL SECURITY;
--> statement-breakpoint
ALTER TABLE household_stamps FORCE ROW LEVEL SECURITY;
--> statement-breakpoint
CREATE POLICY household_stamps_wall ON household_stamps USING (household_id = nullif(current_setting('app.household', true), '')::uuid) WITH CHECK (household_id = nullif(current_setting('app.household', true), '')::uuid);
--> statement-breakpoint
GRANT SELECT, INSERT, UPDATE, DELETE ON household_stamps TO stillroom_app;
--> statement-breakpoint
-- The trigger's argument names the part: garden, kitchen, weather, or house for what both garden and kitchen rest on.
CREATE FUNCTION renew_stamp() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE household_stamps SET
    garden = CASE WHEN TG_ARGV[0] IN ('garden', 'house') THEN gen_random_uuid() ELSE garden END,
    kitchen = CASE WHEN TG_ARGV[0] IN ('kitchen', 'house') THEN gen_random_uuid() ELSE kitchen END,
    weather = CASE WHEN TG_ARGV[0] = 'weather' THEN gen_random_uuid() ELSE weather END
  WHERE household_id IN (SELECT household_id FROM changed);
  RETURN NULL;
END
$$;
--> statement-breakpoint
-- A trigger that sees all changed rows at once may be for one kind of statement only.
CREATE PROCEDURE stamp_writes_to(household_table text, part text) LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('CREATE TRIGGER %I AFTER INSERT ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp(%L)', household_table || '_stamp_insert', household_table, part);
  EXECUTE format('CREATE TRIGGER %I AFTER UPDATE ON %I REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp(%L)', household_table || '_stamp_update', household_table, part);
  EXECUTE format('CREATE TRIGGER %I AFTER DELETE ON %I REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION renew_stamp(%L)', household_table || '_stamp_delete', household_table, part);
END
$$;
--> statement-breakpoint
CALL stamp_writes_to('households', 'house');
--> statement-breakpoint
CALL stamp_writes_to('weather_days', 'weather');
--> statement-breakpoint
CALL stamp_writes_to('beds', 'garden');
--> statement-breakpoint
CALL stamp_writes_to('sowings', 'garden');
--> statement-breakpoint
CALL stamp_writes_to('sightings', 'garden');
--> statement-breakpoint
CALL stamp_writes_to('picks', 'garden');
--> statement-breakpoint
CALL stamp_writes_to('recipes', 'kitchen');
--> statement-breakpoint
CALL stamp_writes_to('recipe_parts', 'kitchen');
--> statement-breakpoint
CALL stamp_writes_to('plan_lines', 'kitchen');
--> statement-breakpoint
CALL stamp_writes_to('cook_days', 'kitchen');
--> statement-breakpoint
CALL stamp_writes_to('cook_day_dishes', 'kitchen');
--> statement-breakpoint
-- Picks go with their sowing only when all of them were undone, or when the household itself goes.
CREATE FUNCTION keep_picked_sowing() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM picks WHERE household_id = OLD.household_id AND sowing_id = OLD.id AND undone_at IS NULL)
     AND EXISTS (SELECT FROM households WHERE household_id = OLD.household_id) THEN
    RAISE EXCEPTION 'picks of this sowing stand' USING ERRCODE = 'foreign_key_violation', CONSTRAINT = 'picks_sowing_fk', TABLE = 'picks';
  END IF;
  RETURN OLD;
END
$$;
--> statement-breakpoint
CREATE TRIGGER sowings_keep_picks BEFORE DELETE ON sowings FOR EACH ROW EXECUTE FUNCTION keep_picked_sowing();
