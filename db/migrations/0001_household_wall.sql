-- The wall between households: every row is guarded by the database itself, not only by the queries that are sent to it.

-- The role that requests run as. Roles belong to the whole cluster, so another database may have made it, or be making it now.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'stillroom_app') THEN
    BEGIN
      CREATE ROLE stillroom_app NOLOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE NOREPLICATION;
    EXCEPTION WHEN duplicate_object OR unique_violation THEN
      NULL;
    END;
  END IF;
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'stillroom_app' AND (rolsuper OR rolbypassrls OR rolcanlogin)) THEN
    RAISE EXCEPTION 'the role stillroom_app must not log in, be a superuser or bypass row security: alter it, or let the migration make it';
  END IF;
  -- from 16 on being a member does not mean being allowed to become the role
  IF NOT pg_has_role(current_user, 'stillroom_app', CASE WHEN current_setting('server_version_num')::int >= 160000 THEN 'SET' ELSE 'MEMBER' END) THEN
    BEGIN
      EXECUTE format('GRANT stillroom_app TO %I', current_user);
    EXCEPTION WHEN unique_violation THEN
      NULL;
    END;
  END IF;
END
$$;
--> statement-breakpoint
GRANT USAGE ON SCHEMA public TO stillroom_app;
--> statement-breakpoint
-- FORCE, because without it the owner of a table sees every row. nullif, because after a transaction the setting reads as an empty string.
DO $$
DECLARE
  household_table text;
BEGIN
  FOREACH household_table IN ARRAY ARRAY[
    'households', 'weather_days', 'beds', 'sowings', 'sightings', 'picks', 'recipes', 'recipe_parts', 'plan_lines', 'cook_days', 'cook_day_dishes'
  ] LOOP
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
GRANT SELECT, INSERT, UPDATE, DELETE ON households, weather_days, beds, sowings, sightings, recipes, recipe_parts, plan_lines, cook_days, cook_day_dishes TO stillroom_app;
--> statement-breakpoint
-- A pick is written once. Undoing it sets undone_at; the row goes only when its household goes: deleting the household row cascades
-- to every table as a referential action, which runs as the owner of the table and not as the app role.
GRANT SELECT, INSERT, UPDATE (undone_at) ON picks TO stillroom_app;
--> statement-breakpoint
GRANT SELECT ON sources, crops, reference_rows, book_recipes TO stillroom_app;
