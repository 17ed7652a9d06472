/* stead-schema-2.c - the second step of the schema: all that the farm raises.
 *
 * The log of the flocks becomes the log of every batch, so that feed, deaths
 * and notes are kept in one way.  Waters are what is tested and what fish,
 * plants and bacteria share; a place may stand in one.  Temperatures are in
 * degrees Celsius, concentrations in mg/L, growth as TGC x 100.
 */
#include "config.h"

#include "store/stead-schema-private.h"

/* What the farm makes itself, and animals that are bought, become items too. */
#define ITEM \
  "CREATE TABLE new_item (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  kind TEXT NOT NULL CHECK (kind IN ('feed', 'bedding', 'packaging', 'ingredient', 'seed', 'supply',\n" \
  "                                     'livestock', 'produce')),\n" \
  "  unit TEXT NOT NULL,\n" \
  "  allergens TEXT,\n" \
  "  storage TEXT,\n" \
  "  shelf_life_days INTEGER NOT NULL DEFAULT 0 CHECK (shelf_life_days >= 0),\n" \
  "  reorder_base REAL CHECK (reorder_base >= 0)\n" \
  ") STRICT;\n" \
  "INSERT INTO new_item (id, name, kind, unit, allergens, storage, shelf_life_days, reorder_base)\n" \
  "  SELECT id, name, kind, unit, allergens, storage, shelf_life_days, reorder_base FROM item;\n" \
  /* No id is given twice, even one of an item that was deleted. */ \
  "UPDATE sqlite_sequence SET seq = (SELECT seq FROM sqlite_sequence WHERE name = 'item')\n" \
  " WHERE name = 'new_item';\n" \
  "DROP TABLE item;\n" \
  "ALTER TABLE new_item RENAME TO item;\n"

/* Feed and care belong to any batch, not to a flock alone. */
#define BATCH \
  "ALTER TABLE batch ADD COLUMN feed_item_id INTEGER REFERENCES item (id);\n" \
  "ALTER TABLE batch ADD COLUMN care_minutes_day REAL NOT NULL DEFAULT 0\n" \
  "  CHECK (care_minutes_day BETWEEN 0 AND 1440);\n" \
  "UPDATE batch SET (feed_item_id, care_minutes_day) =\n" \
  "  (SELECT feed_item_id, care_minutes_day FROM flock WHERE batch_id = batch.id) WHERE kind = 'flock';\n" \
  "CREATE INDEX batch_feed ON batch (feed_item_id) WHERE feed_item_id IS NOT NULL;\n"

#define FLOCK \
  "CREATE TABLE new_flock (\n" \
  "  batch_id INTEGER PRIMARY KEY REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  species TEXT NOT NULL CHECK (species IN ('hen', 'duck', 'quail', 'other')),\n" \
  "  strain TEXT,\n" \
  "  hatched_on INTEGER NOT NULL,\n" \
  "  birds INTEGER NOT NULL CHECK (birds BETWEEN 1 AND 1000000),\n" \
  "  birds_cost_cents INTEGER NOT NULL CHECK (birds_cost_cents >= 0),\n" \
  "  birds_are_gift INTEGER NOT NULL CHECK (birds_are_gift IN (0, 1)),\n" \
  /* Raised here from chicks: what went in before the day of lay is spread over lay. */ \
  "  reared INTEGER NOT NULL CHECK (reared IN (0, 1)),\n" \
  "  lay_began_on INTEGER,\n" \
  "  salvage_cents INTEGER NOT NULL CHECK (salvage_cents >= 0),\n" \
  "  eggs_expected REAL NOT NULL CHECK (eggs_expected > 0),\n" \
  "  bedding_days INTEGER NOT NULL DEFAULT 0 CHECK (bedding_days >= 0),\n" \
  "  nests INTEGER CHECK (nests >= 0),\n" \
  "  roost_m REAL CHECK (roost_m >= 0),\n" \
  "  run_m2 REAL CHECK (run_m2 >= 0),\n" \
  "  light_hours REAL CHECK (light_hours BETWEEN 0 AND 24),\n" \
  "  level_frac REAL NOT NULL CHECK (level_frac BETWEEN 0 AND 1),\n" \
  "  decline_week REAL NOT NULL CHECK (decline_week BETWEEN 0 AND 1),\n" \
  "  steepness_week REAL NOT NULL CHECK (steepness_week > 0),\n" \
  "  half_week REAL NOT NULL,\n" \
  "  onset_age_weeks REAL NOT NULL CHECK (onset_age_weeks BETWEEN 0 AND 100),\n" \
  "  CHECK (reared = 1 OR salvage_cents <= birds_cost_cents)\n" \
  ") STRICT;\n" \
  "INSERT INTO new_flock (batch_id, species, strain, hatched_on, birds, birds_cost_cents, birds_are_gift, reared,\n" \
  "                       salvage_cents, eggs_expected, bedding_days, level_frac, decline_week, steepness_week,\n" \
  "                       half_week, onset_age_weeks)\n" \
  "  SELECT batch_id, 'hen', strain, hatched_on, birds, birds_cost_cents, birds_are_gift, 0, salvage_cents,\n" \
  "         eggs_expected, bedding_days, level_frac, decline_week, steepness_week, half_week, onset_age_weeks\n" \
  "    FROM flock;\n" \
  "DROP TABLE flock;\n" \
  "ALTER TABLE new_flock RENAME TO flock;\n"

/* The log of any batch: eggs are a flock's, water and refusal are of fish. */
#define LOG \
  "ALTER TABLE flock_entry RENAME TO batch_entry;\n" \
  "ALTER TABLE batch_entry ADD COLUMN water_c REAL CHECK (water_c BETWEEN -5 AND 60);\n" \
  "ALTER TABLE batch_entry ADD COLUMN refused INTEGER NOT NULL DEFAULT 0 CHECK (refused IN (0, 1));\n" \
  "ALTER TABLE batch_entry ADD COLUMN reason TEXT;\n" \
  "ALTER TABLE movement RENAME COLUMN flock_entry_id TO entry_id;\n" \
  "DROP INDEX flock_entry_day;\n" \
  "DROP INDEX flock_entry_lost;\n" \
  "DROP INDEX flock_entry_feed;\n" \
  "DROP INDEX flock_entry_person;\n" \
  "CREATE INDEX batch_entry_day ON batch_entry (batch_id, day, eggs, cracked, deaths, culled, feed_kg, left_out);\n" \
  "CREATE INDEX batch_entry_lost ON batch_entry (batch_id, day, deaths, culled) WHERE deaths + culled > 0;\n" \
  "CREATE INDEX batch_entry_feed ON batch_entry (batch_id, day) WHERE feed_kg > 0;\n" \
  "CREATE INDEX batch_entry_water ON batch_entry (batch_id, day, water_c) WHERE water_c IS NOT NULL;\n" \
  "CREATE INDEX batch_entry_person ON batch_entry (person_id) WHERE person_id IS NOT NULL;\n"

#define EGGS \
  "CREATE TABLE egg_grading (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  jumbo INTEGER NOT NULL CHECK (jumbo >= 0),\n" \
  "  extra_large INTEGER NOT NULL CHECK (extra_large >= 0),\n" \
  "  large INTEGER NOT NULL CHECK (large >= 0),\n" \
  "  medium INTEGER NOT NULL CHECK (medium >= 0),\n" \
  "  small INTEGER NOT NULL CHECK (small >= 0),\n" \
  "  peewee INTEGER NOT NULL CHECK (peewee >= 0),\n" \
  /* Found with the light: not to be packed. */ \
  "  blood INTEGER NOT NULL CHECK (blood >= 0),\n" \
  "  checked INTEGER NOT NULL CHECK (checked >= 0),\n" \
  "  dirty INTEGER NOT NULL CHECK (dirty >= 0),\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX egg_grading_day ON egg_grading (batch_id, day);\n" \
  "CREATE TABLE egg_sample (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  egg_g REAL NOT NULL CHECK (egg_g BETWEEN 5 AND 250),\n" \
  "  albumen_mm REAL NOT NULL CHECK (albumen_mm BETWEEN 0 AND 20),\n" \
  "  egg_c REAL CHECK (egg_c BETWEEN -5 AND 60),\n" \
  "  person_id INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX egg_sample_day ON egg_sample (batch_id, day);\n"

/* A body of water that is tested as one: a tank, or tanks and beds on one loop. */
#define WATER \
  "CREATE TABLE water (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  kind TEXT NOT NULL CHECK (kind IN ('tank', 'hydroponic', 'aquaponic')),\n" \
  /* NULL: the sum of its tanks. */ \
  "  volume_l REAL CHECK (volume_l > 0),\n" \
  "  salinity_g_l REAL NOT NULL CHECK (salinity_g_l BETWEEN 0 AND 45),\n" \
  "  test_days INTEGER NOT NULL CHECK (test_days BETWEEN 1 AND 365),\n" \
  "  ended_on INTEGER,\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "ALTER TABLE place ADD COLUMN water_id INTEGER REFERENCES water (id) ON DELETE SET NULL;\n" \
  "CREATE TABLE tank (\n" \
  "  place_id INTEGER PRIMARY KEY REFERENCES place (id) ON DELETE CASCADE,\n" \
  "  shape TEXT NOT NULL CHECK (shape IN ('round', 'box', 'cone', 'other')),\n" \
  "  length_m REAL CHECK (length_m > 0),\n" \
  "  width_m REAL CHECK (width_m > 0),\n" \
  "  diameter_m REAL CHECK (diameter_m > 0),\n" \
  "  depth_m REAL CHECK (depth_m > 0),\n" \
  "  cone_m REAL CHECK (cone_m >= 0),\n" \
  "  volume_l REAL CHECK (volume_l > 0),\n" \
  "  flow_l_min REAL CHECK (flow_l_min >= 0),\n" \
  "  CHECK (shape <> 'round' OR (diameter_m IS NOT NULL AND depth_m IS NOT NULL)),\n" \
  "  CHECK (shape <> 'cone' OR (diameter_m IS NOT NULL AND depth_m IS NOT NULL AND cone_m IS NOT NULL)),\n" \
  "  CHECK (shape <> 'box' OR (length_m IS NOT NULL AND width_m IS NOT NULL AND depth_m IS NOT NULL)),\n" \
  "  CHECK ((shape = 'other') = (volume_l IS NOT NULL))\n" \
  ") STRICT;\n" \
  "CREATE TABLE water_test (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  water_id INTEGER NOT NULL REFERENCES water (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  /* Minutes after midnight, as the clock on the wall shows it. */ \
  "  minute INTEGER CHECK (minute BETWEEN 0 AND 1439),\n" \
  "  temperature_c REAL CHECK (temperature_c BETWEEN -5 AND 60),\n" \
  "  ph REAL CHECK (ph BETWEEN 0 AND 14),\n" \
  "  tan_mgl REAL CHECK (tan_mgl >= 0),\n" \
  "  nitrite_mgl REAL CHECK (nitrite_mgl >= 0),\n" \
  "  nitrate_mgl REAL CHECK (nitrate_mgl >= 0),\n" \
  "  oxygen_mgl REAL CHECK (oxygen_mgl >= 0),\n" \
  "  alkalinity_mgl REAL CHECK (alkalinity_mgl >= 0),\n" \
  "  hardness_mgl REAL CHECK (hardness_mgl >= 0),\n" \
  "  conductivity_us REAL CHECK (conductivity_us >= 0),\n" \
  "  chlorine_mgl REAL CHECK (chlorine_mgl >= 0),\n" \
  "  chloride_mgl REAL CHECK (chloride_mgl >= 0),\n" \
  /* What was done about it. */ \
  "  action TEXT,\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX water_test_day ON water_test (water_id, day, minute);\n"

#define FISH \
  "CREATE TABLE fish (\n" \
  "  batch_id INTEGER PRIMARY KEY REFERENCES batch (id) ON DELETE CASCADE,\n" \
  /* A species that the program knows, or another in the farm's own words. */ \
  "  species TEXT NOT NULL CHECK (length (species) BETWEEN 1 AND 200),\n" \
  "  stocked INTEGER NOT NULL CHECK (stocked BETWEEN 0 AND 100000000),\n" \
  "  stocked_g REAL NOT NULL CHECK (stocked_g > 0),\n" \
  "  cost_cents INTEGER NOT NULL CHECK (cost_cents >= 0),\n" \
  "  is_gift INTEGER NOT NULL CHECK (is_gift IN (0, 1)),\n" \
  "  protein_frac REAL CHECK (protein_frac BETWEEN 0.05 AND 0.8),\n" \
  "  tgc REAL NOT NULL CHECK (tgc > 0),\n" \
  "  sale_g REAL NOT NULL CHECK (sale_g > 0),\n" \
  "  sale_frac REAL NOT NULL CHECK (sale_frac > 0 AND sale_frac < 1),\n" \
  "  spread_frac REAL NOT NULL CHECK (spread_frac BETWEEN 0 AND 1),\n" \
  "  deaths_year REAL NOT NULL CHECK (deaths_year BETWEEN 0 AND 1),\n" \
  "  purge_days INTEGER NOT NULL CHECK (purge_days BETWEEN 0 AND 60),\n" \
  "  purge_from INTEGER\n" \
  ") STRICT;\n" \
  "CREATE TABLE weighing (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  n INTEGER NOT NULL CHECK (n BETWEEN 1 AND 1000000),\n" \
  "  total_kg REAL NOT NULL CHECK (total_kg > 0),\n" \
  /* Of single weights; NULL: weighed in bulk. */ \
  "  sd_g REAL CHECK (sd_g >= 0),\n" \
  "  length_cm REAL CHECK (length_cm > 0),\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  left_out INTEGER NOT NULL DEFAULT 0 CHECK (left_out IN (0, 1))\n" \
  ") STRICT;\n" \
  "CREATE INDEX weighing_day ON weighing (batch_id, day);\n" \
  "CREATE TABLE weighed (\n" \
  "  weighing_id INTEGER NOT NULL REFERENCES weighing (id) ON DELETE CASCADE,\n" \
  "  number INTEGER NOT NULL CHECK (number >= 1),\n" \
  "  weight_g REAL NOT NULL CHECK (weight_g > 0),\n" \
  "  length_cm REAL CHECK (length_cm > 0),\n" \
  "  PRIMARY KEY (weighing_id, number)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  /* Fish that went from one group to another, with the cost that they carry. */ \
  "CREATE TABLE fish_move (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  from_id INTEGER NOT NULL REFERENCES fish (batch_id),\n" \
  "  to_id INTEGER NOT NULL REFERENCES fish (batch_id),\n" \
  "  n INTEGER NOT NULL CHECK (n >= 1),\n" \
  "  mean_g REAL NOT NULL CHECK (mean_g > 0),\n" \
  "  cost_cents INTEGER NOT NULL CHECK (cost_cents >= 0),\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  CHECK (from_id <> to_id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX fish_move_from ON fish_move (from_id, day);\n" \
  "CREATE INDEX fish_move_to ON fish_move (to_id, day);\n" \
  /* Where a batch was before: each row ends the stay in a place. */ \
  "CREATE TABLE batch_stay (\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  until_day INTEGER NOT NULL,\n" \
  "  place_id INTEGER REFERENCES place (id),\n" \
  "  PRIMARY KEY (batch_id, until_day)\n" \
  ") STRICT, WITHOUT ROWID;\n"

#define CROP \
  "CREATE TABLE crop (\n" \
  "  batch_id INTEGER PRIMARY KEY REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  crop TEXT NOT NULL CHECK (length (crop) BETWEEN 1 AND 200),\n" \
  "  variety TEXT,\n" \
  "  system TEXT NOT NULL CHECK (system IN ('soil', 'hydroponic', 'aquaponic')),\n" \
  "  sown_on INTEGER,\n" \
  "  set_out_on INTEGER,\n" \
  "  first_ripe_on INTEGER,\n" \
  "  plants INTEGER NOT NULL CHECK (plants BETWEEN 1 AND 10000000),\n" \
  "  area_m2 REAL CHECK (area_m2 > 0),\n" \
  "  cost_cents INTEGER NOT NULL CHECK (cost_cents >= 0),\n" \
  "  is_gift INTEGER NOT NULL CHECK (is_gift IN (0, 1)),\n" \
  "  base_c REAL NOT NULL CHECK (base_c BETWEEN -5 AND 30),\n" \
  "  upper_c REAL CHECK (upper_c > base_c),\n" \
  "  method TEXT NOT NULL CHECK (method IN ('average', 'substitute', 'ceiling')),\n" \
  "  ripe_need REAL NOT NULL CHECK (ripe_need > 0),\n" \
  "  yield_kg REAL NOT NULL CHECK (yield_kg > 0),\n" \
  "  pick_weeks REAL NOT NULL CHECK (pick_weeks > 0),\n" \
  /* Whose thermometer it follows; NULL: outdoors. */ \
  "  climate_id INTEGER REFERENCES place (id)\n" \
  ") STRICT;\n" \
  /* One day at one thermometer; no place: outdoors. */ \
  "CREATE TABLE climate (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  place_id INTEGER REFERENCES place (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  min_c REAL CHECK (min_c BETWEEN -60 AND 70),\n" \
  "  max_c REAL CHECK (max_c BETWEEN -60 AND 70),\n" \
  "  rh_frac REAL CHECK (rh_frac BETWEEN 0 AND 1),\n" \
  "  light_mol REAL CHECK (light_mol BETWEEN 0 AND 100),\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  CHECK (min_c <= max_c),\n" \
  "  CHECK (coalesce (min_c, max_c, rh_frac, light_mol) IS NOT NULL)\n" \
  ") STRICT;\n" \
  "CREATE UNIQUE INDEX climate_day ON climate (coalesce (place_id, 0), day);\n" \
  /* The usual year of a place, a month a row. */ \
  "CREATE TABLE usual_month (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  place_id INTEGER REFERENCES place (id) ON DELETE CASCADE,\n" \
  "  month INTEGER NOT NULL CHECK (month BETWEEN 1 AND 12),\n" \
  "  min_c REAL NOT NULL CHECK (min_c BETWEEN -60 AND 70),\n" \
  "  max_c REAL NOT NULL CHECK (max_c BETWEEN -60 AND 70),\n" \
  "  CHECK (min_c <= max_c)\n" \
  ") STRICT;\n" \
  "CREATE UNIQUE INDEX usual_month_of ON usual_month (coalesce (place_id, 0), month);\n" \
  /* What keeps a bay warm, and what it costs. */ \
  "CREATE TABLE glasshouse (\n" \
  "  place_id INTEGER PRIMARY KEY REFERENCES place (id) ON DELETE CASCADE,\n" \
  "  cover_m2 REAL NOT NULL CHECK (cover_m2 > 0),\n" \
  "  u_w_m2_k REAL NOT NULL CHECK (u_w_m2_k > 0),\n" \
  "  volume_m3 REAL NOT NULL CHECK (volume_m3 > 0),\n" \
  "  changes_hour REAL NOT NULL CHECK (changes_hour BETWEEN 0 AND 100),\n" \
  "  inside_c REAL NOT NULL CHECK (inside_c BETWEEN -10 AND 40),\n" \
  "  sun_lift_c REAL NOT NULL CHECK (sun_lift_c BETWEEN 0 AND 20),\n" \
  "  fuel TEXT NOT NULL CHECK (fuel IN ('propane', 'oil', 'gas', 'electricity')),\n" \
  "  efficiency_frac REAL NOT NULL CHECK (efficiency_frac > 0 AND efficiency_frac <= 1),\n" \
  "  fuel_cents REAL NOT NULL CHECK (fuel_cents >= 0)\n" \
  ") STRICT;\n"

/* What a batch gave into a lot, and what of it was lost at once. */
#define HARVEST \
  "CREATE TABLE harvest (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  lot_id INTEGER UNIQUE REFERENCES lot (id),\n" \
  "  pieces INTEGER CHECK (pieces >= 0),\n" \
  "  live_kg REAL CHECK (live_kg > 0),\n" \
  "  lost_base REAL NOT NULL CHECK (lost_base >= 0),\n" \
  "  grade TEXT,\n" \
  "  reason TEXT,\n" \
  "  is_last INTEGER NOT NULL CHECK (is_last IN (0, 1)),\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  CHECK (lot_id IS NOT NULL OR lost_base > 0),\n" \
  "  CHECK (lost_base = 0 OR length (reason) > 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX harvest_day ON harvest (batch_id, day);\n"

#define CARE \
  /* Medicines are a veterinarian's order; what comes from the batch waits until then. */ \
  "CREATE TABLE treatment (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  what TEXT NOT NULL CHECK (length (what) BETWEEN 1 AND 200),\n" \
  "  dose TEXT,\n" \
  "  ordered_by TEXT NOT NULL CHECK (length (ordered_by) BETWEEN 1 AND 200),\n" \
  "  last_day INTEGER NOT NULL CHECK (last_day >= day),\n" \
  "  wait_until INTEGER NOT NULL CHECK (wait_until >= last_day),\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX treatment_batch ON treatment (batch_id, wait_until);\n" \
  "CREATE TABLE batch_note (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  text TEXT,\n" \
  "  picture_id INTEGER REFERENCES picture (id),\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  CHECK (coalesce (text, picture_id) IS NOT NULL)\n" \
  ") STRICT;\n" \
  "CREATE INDEX batch_note_day ON batch_note (batch_id, day);\n" \
  /* Scaled down before they come here. */ \
  "CREATE TABLE picture (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 8000),\n" \
  "  height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 8000),\n" \
  "  jpeg BLOB NOT NULL CHECK (length (jpeg) BETWEEN 1 AND 1000000)\n" \
  ") STRICT;\n" \
  "CREATE TABLE batch_plan (\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  what TEXT NOT NULL CHECK (what IN ('output_base', 'price_cents', 'feed_kg', 'feed_cents_kg', 'other_cents',\n" \
  "                                     'care_minutes_day', 'lost_frac', 'ends_on')),\n" \
  "  value REAL NOT NULL,\n" \
  "  PRIMARY KEY (batch_id, what)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  /* What has to be done again and again, or once at an age or a sum of degree days. */ \
  "CREATE TABLE routine (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  water_id INTEGER REFERENCES water (id) ON DELETE CASCADE,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  every_days INTEGER CHECK (every_days BETWEEN 1 AND 3660),\n" \
  "  start_on INTEGER,\n" \
  "  age_days INTEGER CHECK (age_days BETWEEN 0 AND 36600),\n" \
  "  degree_days REAL CHECK (degree_days > 0),\n" \
  "  paused INTEGER NOT NULL DEFAULT 0 CHECK (paused IN (0, 1)),\n" \
  "  CHECK ((batch_id IS NULL) <> (water_id IS NULL)),\n" \
  "  CHECK ((every_days IS NOT NULL) + (age_days IS NOT NULL) + (degree_days IS NOT NULL) = 1),\n" \
  "  CHECK ((every_days IS NULL) = (start_on IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX routine_batch ON routine (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX routine_water ON routine (water_id) WHERE water_id IS NOT NULL;\n" \
  "CREATE TABLE routine_done (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  routine_id INTEGER NOT NULL REFERENCES routine (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  note TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX routine_done_day ON routine_done (routine_id, day);\n"

/* A product may be sold by weight: what one unit takes of its batch, in base units. */
#define PRODUCT \
  "ALTER TABLE product RENAME COLUMN eggs_per_unit TO base_per_unit;\n"

const char stead_schema_step_2[] =
  ITEM BATCH FLOCK LOG EGGS WATER FISH CROP HARVEST CARE PRODUCT;
