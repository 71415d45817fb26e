-- The larder behind the wall between households, like every other table.
DO $$
DECLARE
  household_table text;
BEGIN
  FOREACH household_table IN ARRAY ARRAY['places', 'lots', 'movements', 'wishes', 'stock_targets', 'supplies'] LOOP
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
GRANT SELECT, INSERT, UPDATE, DELETE ON places, lots, wishes, stock_targets, supplies TO stillroom_app;
--> statement-breakpoint
-- A movement is written once. Undoing it sets undone_at; the row goes only with its lot, or with its household.
GRANT SELECT, INSERT, UPDATE (undone_at) ON movements TO stillroom_app;
--> statement-breakpoint
-- The trigger's argument names the part: garden, kitchen, weather, larder, or house for what both garden and kitchen rest on.
CREATE OR REPLACE FUNCTION renew_stamp() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE household_stamps SET
    garden = CASE WHEN TG_ARGV[0] IN ('garden', 'house') THEN gen_random_uuid() ELSE garden END,
    kitchen = CASE WHEN TG_ARGV[0] IN ('kitchen', 'house') THEN gen_random_uuid() ELSE kitchen END,
    weather = CASE WHEN TG_ARGV[0] = 'weather' THEN gen_random_uuid() ELSE weather END,
    larder = CASE WHEN TG_ARGV[0] = 'larder' THEN gen_random_uuid() ELSE larder END
  WHERE household_id IN (SELECT household_id FROM changed);
  RETURN NULL;
END
$$;
--> statement-breakpoint
CALL stamp_writes_to('places', 'larder');
--> statement-breakpoint
CALL stamp_writes_to('lots', 'larder');
--> statement-breakpoint
CALL stamp_writes_to('movements', 'larder');
--> statement-breakpoint
CALL stamp_writes_to('supplies', 'larder');
--> statement-breakpoint
CALL stamp_writes_to('wishes', 'kitchen');
--> statement-breakpoint
CALL stamp_writes_to('stock_targets', 'kitchen');
--> statement-breakpoint
-- Movements go with their lot only when all of them were undone, or when the household itself goes.
CREATE FUNCTION keep_moved_lot() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM movements WHERE household_id = OLD.household_id AND lot_id = OLD.id AND undone_at IS NULL)
     AND EXISTS (SELECT FROM households WHERE household_id = OLD.household_id) THEN
    RAISE EXCEPTION 'movements of this lot stand' USING ERRCODE = 'foreign_key_violation', CONSTRAINT = 'movements_lot_fk', TABLE = 'movements';
  END IF;
  RETURN OLD;
END
$$;
--> statement-breakpoint
CREATE TRIGGER lots_keep_movements BEFORE DELETE ON lots FOR EACH ROW EXECUTE FUNCTION keep_moved_lot();
