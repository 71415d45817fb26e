-- Tastes behind the wall between households, like every other table.
ALTER TABLE tastes ENABLE ROW LEVEL SECURITY;
--> statement-breakpoint
ALTER TABLE tastes FORCE ROW LEVEL SECURITY;
--> statement-breakpoint
CREATE POLICY tastes_wall ON tastes USING (household_id = nullif(current_setting('app.household', true), '')::uuid) WITH CHECK (household_id = nullif(current_setting('app.household', true), '')::uuid);
--> statement-breakpoint
GRANT SELECT, INSERT, UPDATE, DELETE ON tastes TO stillroom_app;
--> statement-breakpoint
CALL stamp_writes_to('tastes', 'kitchen');
