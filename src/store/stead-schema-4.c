/* stead-schema-4.c - the fourth step of the schema: what is checked, sale days,
 * what is tried out on prices, and what is to be built (stead-schema-build-private.h).
 *
 * A checklist keeps its lines and their limits as they were when it was made, so that
 * a table or a recipe changed later does not change what was asked for.  What is signed
 * stays; a correction is one more reading that names the wrong one.  Times of a day are
 * seconds since 1970 (UTC); hours of a plan are minutes since the farm's midnight.
 */
#include "config.h"

#include "store/stead-schema-build-private.h"
#include "store/stead-schema-private.h"

/* What measures: a thermometer, a meter, strips. */
#define INSTRUMENT \
  "CREATE TABLE instrument (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  kind TEXT NOT NULL CHECK (kind IN ('probe', 'infrared', 'air', 'ph_meter', 'strip', 'logger')),\n" \
  /* What a thermometer shows; it decides how far off it may be. */ \
  "  scale TEXT CHECK (scale IN ('F_only', 'C_only', 'dual')),\n" \
  /* Smallest step shown, and plus or minus as its maker states: °C, pH, mg/L. */ \
  "  shows_step REAL CHECK (shows_step > 0),\n" \
  "  error REAL CHECK (error >= 0),\n" \
  "  place_id INTEGER REFERENCES place (id),\n" \
  "  retired_on INTEGER\n" \
  ") STRICT;\n" \
  "CREATE INDEX instrument_place ON instrument (place_id) WHERE place_id IS NOT NULL;\n"

/* A row of a table of limits as it was on the day. */
#define LIMIT_COLUMNS \
  "  limit_id TEXT NOT NULL,\n" \
  "  process TEXT NOT NULL,\n" \
  "  subject TEXT NOT NULL,\n" \
  "  conditions TEXT NOT NULL,\n" \
  "  measure TEXT NOT NULL,\n" \
  "  direction TEXT NOT NULL CHECK (direction IN ('at_least', 'at_most', 'above', 'below', 'is')),\n" \
  "  value REAL,\n" \
  "  unit TEXT NOT NULL,\n" \
  "  word TEXT,\n" \
  "  time_direction TEXT CHECK (time_direction IN ('at_least', 'at_most', 'above', 'below', 'is')),\n" \
  "  time_s REAL,\n" \
  "  hazard TEXT NOT NULL,\n" \
  "  source TEXT NOT NULL,\n" \
  "  source_where TEXT NOT NULL,\n" \
  "  version TEXT NOT NULL,\n" \
  "  status TEXT NOT NULL,\n" \
  "  note TEXT NOT NULL,\n" \
  /* Of a stricter local rule: what the shipped row cites. */ \
  "  replaces TEXT,\n" \
  "  CHECK (value IS NOT NULL OR word IS NOT NULL)\n"

/* A stricter rule of the school or of the health department, instead of a row of data/limits. */
#define LOCAL_LIMIT \
  "CREATE TABLE local_limit (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  limit_id TEXT NOT NULL CHECK (length (limit_id) BETWEEN 1 AND 80),\n" \
  "  value REAL NOT NULL,\n" \
  "  unit TEXT NOT NULL,\n" \
  "  time_s REAL CHECK (time_s > 0),\n" \
  "  source TEXT NOT NULL CHECK (length (source) BETWEEN 1 AND 400),\n" \
  "  source_where TEXT,\n" \
  "  version TEXT,\n" \
  "  from_day INTEGER NOT NULL,\n" \
  "  retired_on INTEGER CHECK (retired_on >= from_day)\n" \
  ") STRICT;\n" \
  "CREATE UNIQUE INDEX local_limit_one ON local_limit (limit_id) WHERE retired_on IS NULL;\n"

#define CHECKLIST \
  "CREATE TABLE checklist (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  day INTEGER NOT NULL,\n" \
  /* Of a kitchen batch, of a sale day, or of neither: a menu. */ \
  "  batch_id INTEGER REFERENCES batch (id),\n" \
  "  sale_id INTEGER REFERENCES sale_day (id),\n" \
  "  made_at INTEGER NOT NULL,\n" \
  /* What the tables were; and sums over the run sheet and the local limits that it was \
   * made from, to see what is stale. */ \
  "  edition TEXT NOT NULL,\n" \
  "  made_from TEXT,\n" \
  "  local_from TEXT,\n" \
  "  note TEXT,\n" \
  "  signed_by INTEGER REFERENCES person (id),\n" \
  "  signed_at INTEGER,\n" \
  "  seal_no INTEGER UNIQUE CHECK (seal_no > 0),\n" \
  "  seal TEXT,\n" \
  /* The last reading, and the last thing done, that were there when it was signed. */ \
  "  seal_reading INTEGER,\n" \
  "  seal_action INTEGER,\n" \
  "  CHECK (batch_id IS NULL OR sale_id IS NULL),\n" \
  "  CHECK ((signed_by IS NULL) = (signed_at IS NULL) AND (seal IS NULL) = (signed_at IS NULL)\n" \
  "    AND (seal IS NULL) = (seal_no IS NULL) AND (seal IS NULL) = (seal_reading IS NULL)\n" \
  "    AND (seal IS NULL) = (seal_action IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX checklist_day ON checklist (day, id);\n" \
  "CREATE INDEX checklist_batch ON checklist (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX checklist_sale ON checklist (sale_id) WHERE sale_id IS NOT NULL;\n" \
  "CREATE TABLE check_food (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  list_id INTEGER NOT NULL REFERENCES checklist (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  recipe_id INTEGER REFERENCES recipe (id),\n" \
  "  product_id INTEGER REFERENCES product (id),\n" \
  "  process TEXT NOT NULL CHECK (process IN ('no_cook', 'same_day', 'complex')),\n" \
  /* A sum over its recipe as it was. */ \
  "  made_from TEXT,\n" \
  "  UNIQUE (list_id, position)\n" \
  ") STRICT;\n" \
  "CREATE INDEX check_food_recipe ON check_food (recipe_id) WHERE recipe_id IS NOT NULL;\n" \
  "CREATE INDEX check_food_product ON check_food (product_id) WHERE product_id IS NOT NULL;\n" \
  /* What only people could know; food_id NULL: of the whole list. */ \
  "CREATE TABLE check_answer (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  list_id INTEGER NOT NULL REFERENCES checklist (id) ON DELETE CASCADE,\n" \
  "  food_id INTEGER REFERENCES check_food (id) ON DELETE CASCADE,\n" \
  "  question TEXT NOT NULL CHECK (length (question) BETWEEN 1 AND 80),\n" \
  "  answer TEXT NOT NULL CHECK (length (answer) BETWEEN 1 AND 200)\n" \
  ") STRICT;\n" \
  "CREATE UNIQUE INDEX check_answer_one ON check_answer (list_id, coalesce (food_id, 0), question);\n" \
  "CREATE INDEX check_answer_food ON check_answer (food_id) WHERE food_id IS NOT NULL;\n" \
  "CREATE TABLE check_line (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  list_id INTEGER NOT NULL REFERENCES checklist (id) ON DELETE CASCADE,\n" \
  "  food_id INTEGER REFERENCES check_food (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  /* In the words of the generator: "hold_hot", at the stage "hold". */ \
  "  topic TEXT NOT NULL CHECK (length (topic) BETWEEN 1 AND 80),\n" \
  "  stage TEXT NOT NULL CHECK (length (stage) BETWEEN 1 AND 40),\n" \
  "  subject TEXT,\n" \
  "  variant TEXT,\n" \
  /* What is read, as the limit tables name it, and the unit of its limit; "done": a tick. */ \
  "  measure TEXT NOT NULL CHECK (length (measure) BETWEEN 1 AND 40),\n" \
  "  unit TEXT,\n" \
  /* All limits must be met; or any one is enough. */ \
  "  needs_all INTEGER NOT NULL CHECK (needs_all IN (0, 1)),\n" \
  "  tool TEXT NOT NULL,\n" \
  "  often TEXT NOT NULL,\n" \
  "  who TEXT NOT NULL,\n" \
  /* What the recipe itself asks for, °C and seconds. */ \
  "  own_least_c REAL,\n" \
  "  own_most_c REAL,\n" \
  "  own_hold_s REAL CHECK (own_hold_s >= 0),\n" \
  "  step_id INTEGER REFERENCES kitchen_step (id) ON DELETE SET NULL,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  instrument_id INTEGER REFERENCES instrument (id),\n" \
  "  due_at INTEGER,\n" \
  "  every_s REAL CHECK (every_s > 0),\n" \
  /* Why it need not be done after all. */ \
  "  left_out TEXT,\n" \
  "  UNIQUE (list_id, position)\n" \
  ") STRICT;\n" \
  "CREATE INDEX check_line_food ON check_line (food_id) WHERE food_id IS NOT NULL;\n" \
  "CREATE INDEX check_line_step ON check_line (step_id) WHERE step_id IS NOT NULL;\n" \
  "CREATE INDEX check_line_instrument ON check_line (instrument_id) WHERE instrument_id IS NOT NULL;\n" \
  /* The limits of a line; "often" says how often it is read. */ \
  "CREATE TABLE check_limit (\n" \
  "  line_id INTEGER NOT NULL REFERENCES check_line (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  role TEXT NOT NULL CHECK (role IN ('limit', 'often')),\n" \
  LIMIT_COLUMNS \
  "  , PRIMARY KEY (line_id, position)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  /* What cannot be sold as planned, and what was done about it. */ \
  "CREATE TABLE check_stop (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  list_id INTEGER NOT NULL REFERENCES checklist (id) ON DELETE CASCADE,\n" \
  "  food_id INTEGER REFERENCES check_food (id) ON DELETE CASCADE,\n" \
  /* In the words of the generator: "eggs_pooled", "pasteurized". */ \
  "  kind TEXT NOT NULL CHECK (length (kind) BETWEEN 1 AND 80),\n" \
  "  way TEXT NOT NULL CHECK (length (way) BETWEEN 1 AND 80),\n" \
  "  lot_code TEXT,\n" \
  /* Why, as it was told. */ \
  "  told TEXT,\n" \
  "  settled TEXT CHECK (length (settled) BETWEEN 1 AND 4000),\n" \
  "  settled_by INTEGER REFERENCES person (id),\n" \
  "  settled_at INTEGER,\n" \
  LIMIT_COLUMNS \
  "  , CHECK ((settled IS NULL) = (settled_at IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX check_stop_list ON check_stop (list_id);\n" \
  "CREATE INDEX check_stop_food ON check_stop (food_id) WHERE food_id IS NOT NULL;\n"

#define READING \
  /* Something hot that has to get cold; one line may have several. */ \
  "CREATE TABLE check_pot (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  line_id INTEGER NOT NULL REFERENCES check_line (id) ON DELETE CASCADE,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  method TEXT,\n" \
  "  depth_m REAL CHECK (depth_m > 0 AND depth_m <= 2)\n" \
  ") STRICT;\n" \
  "CREATE INDEX check_pot_line ON check_pot (line_id);\n" \
  "ALTER TABLE reading ADD COLUMN line_id INTEGER REFERENCES check_line (id) ON DELETE CASCADE;\n" \
  "ALTER TABLE reading ADD COLUMN pot_id INTEGER REFERENCES check_pot (id) ON DELETE CASCADE;\n" \
  "ALTER TABLE reading ADD COLUMN instrument_id INTEGER REFERENCES instrument (id);\n" \
  "ALTER TABLE reading ADD COLUMN place_id INTEGER REFERENCES place (id);\n" \
  /* How long it was kept so, where the limit has a time. */ \
  "ALTER TABLE reading ADD COLUMN held_s REAL CHECK (held_s >= 0);\n" \
  /* The scale that it was read in; the value is °C all the same. */ \
  "ALTER TABLE reading ADD COLUMN scale TEXT CHECK (scale IN ('F', 'C'));\n" \
  "CREATE INDEX reading_line ON reading (line_id, at) WHERE line_id IS NOT NULL;\n" \
  "CREATE INDEX reading_pot ON reading (pot_id, at) WHERE pot_id IS NOT NULL;\n" \
  "CREATE INDEX reading_instrument ON reading (instrument_id, at) WHERE instrument_id IS NOT NULL;\n" \
  "CREATE INDEX reading_place ON reading (place_id, at) WHERE place_id IS NOT NULL;\n" \
  /* What was done when a limit was not met. */ \
  "CREATE TABLE check_action (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  reading_id INTEGER NOT NULL REFERENCES reading (id) ON DELETE CASCADE,\n" \
  "  at INTEGER NOT NULL,\n" \
  /* As data/limits/correct.csv names it: "keep_cooking"; NULL: something else, in the text. */ \
  "  action TEXT,\n" \
  "  text TEXT,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  CHECK (action IS NOT NULL OR length (text) > 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX check_action_reading ON check_action (reading_id);\n" \
  /* What must not leave the farm until it is settled: a lot, or all lots of a batch. */ \
  "CREATE TABLE safety_hold (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  lot_id INTEGER REFERENCES lot (id) ON DELETE CASCADE,\n" \
  "  batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  reading_id INTEGER REFERENCES reading (id) ON DELETE CASCADE,\n" \
  "  since_at INTEGER NOT NULL,\n" \
  "  reason TEXT NOT NULL CHECK (length (reason) > 0),\n" \
  "  ended_at INTEGER,\n" \
  "  ended_by INTEGER REFERENCES person (id),\n" \
  "  outcome TEXT CHECK (outcome IN ('mended', 'discarded', 'mistaken')),\n" \
  "  note TEXT,\n" \
  "  CHECK ((lot_id IS NULL) <> (batch_id IS NULL)),\n" \
  "  CHECK ((ended_at IS NULL) = (outcome IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX safety_hold_lot ON safety_hold (lot_id) WHERE lot_id IS NOT NULL;\n" \
  "CREATE INDEX safety_hold_batch ON safety_hold (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX safety_hold_reading ON safety_hold (reading_id) WHERE reading_id IS NOT NULL;\n" \
  "CREATE INDEX safety_hold_open ON safety_hold (since_at) WHERE ended_at IS NULL;\n" \
  "CREATE TRIGGER movement_held BEFORE INSERT ON movement\n" \
  "WHEN NEW.kind IN ('sold', 'given', 'used') AND EXISTS (\n" \
  "  SELECT 1 FROM safety_hold WHERE ended_at IS NULL AND (lot_id = NEW.lot_id\n" \
  "     OR batch_id = (SELECT batch_id FROM lot WHERE id = NEW.lot_id))) BEGIN\n" \
  "  SELECT RAISE (ABORT, 'held');\n" \
  "END;\n" \
  /* A recall drill that was held. */ \
  "CREATE TABLE drill (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  lot_id INTEGER NOT NULL REFERENCES lot (id),\n" \
  "  started_at INTEGER NOT NULL,\n" \
  "  ended_at INTEGER CHECK (ended_at >= started_at),\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  /* Of what was made: accounted for by the record, and found when looked for. */ \
  "  known_frac REAL CHECK (known_frac BETWEEN 0 AND 1),\n" \
  "  found_frac REAL CHECK (found_frac BETWEEN 0 AND 1),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX drill_lot ON drill (lot_id);\n" \
  "CREATE INDEX drill_at ON drill (started_at);\n"

/* A list that is signed stays as it is. */
#define SIGNED(table, event, list) \
  "CREATE TRIGGER " table "_signed_" event " BEFORE " event " ON " table "\n" \
  "WHEN EXISTS (SELECT 1 FROM checklist WHERE seal IS NOT NULL AND id = " list ") BEGIN\n" \
  "  SELECT RAISE (ABORT, 'signed');\n" \
  "END;\n"
#define SIGNED_CHILD(table) \
  SIGNED (table, "insert", "NEW.list_id") SIGNED (table, "update", "OLD.list_id") \
  SIGNED (table, "delete", "OLD.list_id")
#define LIST_OF(line) "(SELECT list_id FROM check_line WHERE id = " line ")"
#define LIST_OF_READING(reading) LIST_OF ("(SELECT line_id FROM reading WHERE id = " reading ")")

#define SIGNING \
  SIGNED ("checklist", "update", "OLD.id") SIGNED ("checklist", "delete", "OLD.id") \
  SIGNED_CHILD ("check_food") SIGNED_CHILD ("check_answer") SIGNED_CHILD ("check_line") \
  SIGNED_CHILD ("check_stop") \
  SIGNED ("check_limit", "insert", LIST_OF ("NEW.line_id")) \
  SIGNED ("check_limit", "update", LIST_OF ("OLD.line_id")) \
  SIGNED ("check_limit", "delete", LIST_OF ("OLD.line_id")) \
  SIGNED ("check_pot", "insert", LIST_OF ("NEW.line_id")) \
  SIGNED ("check_pot", "update", LIST_OF ("OLD.line_id")) \
  SIGNED ("check_pot", "delete", LIST_OF ("OLD.line_id")) \
  SIGNED ("reading", "update", LIST_OF ("OLD.line_id")) \
  SIGNED ("reading", "delete", LIST_OF ("OLD.line_id")) \
  SIGNED ("check_action", "update", LIST_OF_READING ("OLD.reading_id")) \
  SIGNED ("check_action", "delete", LIST_OF_READING ("OLD.reading_id")) \
  /* One more reading of it must correct one. */ \
  "CREATE TRIGGER reading_signed_insert BEFORE INSERT ON reading\n" \
  "WHEN NEW.corrects_id IS NULL AND EXISTS (\n" \
  "  SELECT 1 FROM checklist WHERE seal IS NOT NULL AND id = " LIST_OF ("NEW.line_id") ") BEGIN\n" \
  "  SELECT RAISE (ABORT, 'signed');\n" \
  "END;\n"

#define SALE \
  "CREATE TABLE sale_day (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  location TEXT,\n" \
  "  opens_min INTEGER NOT NULL CHECK (opens_min BETWEEN 0 AND 1440),\n" \
  "  closes_min INTEGER NOT NULL CHECK (closes_min > opens_min AND closes_min <= 2880),\n" \
  "  weather TEXT,\n" \
  /* The box that the money goes into. */ \
  "  account_id INTEGER REFERENCES account (id),\n" \
  "  note TEXT,\n" \
  "  opened_at INTEGER,\n" \
  "  closed_at INTEGER CHECK (closed_at >= opened_at),\n" \
  "  change_next TEXT,\n" \
  "  UNIQUE (name, day)\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_day_day ON sale_day (day, id);\n" \
  "CREATE INDEX sale_day_account ON sale_day (account_id) WHERE account_id IS NOT NULL;\n" \
  "CREATE TABLE sale_line (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  sale_id INTEGER NOT NULL REFERENCES sale_day (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  product_id INTEGER NOT NULL REFERENCES product (id),\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),\n" \
  "  planned REAL NOT NULL CHECK (planned >= 0),\n" \
  /* NULL: what was planned. */ \
  "  brought REAL CHECK (brought >= 0),\n" \
  /* What one was thought to cost when it was planned. */ \
  "  cost_cents REAL CHECK (cost_cents >= 0),\n" \
  /* What people may ask for, and what one too many or too few is worth. */ \
  "  low REAL CHECK (low >= 0),\n" \
  "  likely REAL CHECK (likely >= low),\n" \
  "  high REAL CHECK (high >= likely),\n" \
  "  left_cents INTEGER,\n" \
  "  missed_cents INTEGER CHECK (missed_cents >= 0),\n" \
  /* Each another one; undo could not exchange two, if the file held that. */ \
  "  key TEXT CHECK (length (key) = 1),\n" \
  "  UNIQUE (sale_id, product_id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_line_product ON sale_line (product_id);\n" \
  /* A price changed while selling; both are kept, with the time. */ \
  "CREATE TABLE sale_price (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  line_id INTEGER NOT NULL REFERENCES sale_line (id) ON DELETE CASCADE,\n" \
  "  at INTEGER NOT NULL,\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_price_line ON sale_price (line_id, at);\n" \
  "CREATE TABLE sale_lot (\n" \
  "  line_id INTEGER NOT NULL REFERENCES sale_line (id) ON DELETE CASCADE,\n" \
  "  lot_id INTEGER NOT NULL REFERENCES lot (id),\n" \
  "  base REAL NOT NULL CHECK (base > 0),\n" \
  "  PRIMARY KEY (line_id, lot_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX sale_lot_lot ON sale_lot (lot_id);\n" \
  "CREATE TABLE sale_cost (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  sale_id INTEGER NOT NULL REFERENCES sale_day (id) ON DELETE CASCADE,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  cents INTEGER NOT NULL CHECK (cents >= 0),\n" \
  /* What it came to; NULL: as planned. */ \
  "  paid_cents INTEGER CHECK (paid_cents >= 0),\n" \
  "  from_till INTEGER NOT NULL CHECK (from_till IN (0, 1))\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_cost_sale ON sale_cost (sale_id);\n" \
  "CREATE TABLE sale_shift (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  sale_id INTEGER NOT NULL REFERENCES sale_day (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id),\n" \
  "  from_min INTEGER NOT NULL CHECK (from_min BETWEEN 0 AND 1440),\n" \
  "  to_min INTEGER NOT NULL CHECK (to_min > from_min AND to_min <= 2880),\n" \
  "  break_min INTEGER NOT NULL CHECK (break_min >= 0 AND break_min < to_min - from_min),\n" \
  "  duty TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_shift_sale ON sale_shift (sale_id, from_min);\n" \
  "CREATE INDEX sale_shift_person ON sale_shift (person_id);\n" \
  "CREATE TABLE sale_float (\n" \
  "  sale_id INTEGER NOT NULL REFERENCES sale_day (id) ON DELETE CASCADE,\n" \
  "  face_cents INTEGER NOT NULL CHECK (face_cents > 0),\n" \
  "  pieces INTEGER NOT NULL CHECK (pieces > 0),\n" \
  "  PRIMARY KEY (sale_id, face_cents)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE TABLE sale_bring (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  sale_id INTEGER NOT NULL REFERENCES sale_day (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  text TEXT NOT NULL CHECK (length (text) BETWEEN 1 AND 400),\n" \
  "  packed INTEGER NOT NULL CHECK (packed IN (0, 1))\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_bring_sale ON sale_bring (sale_id, position);\n" \
  "CREATE TABLE sale_order (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  sale_id INTEGER NOT NULL REFERENCES sale_day (id) ON DELETE CASCADE,\n" \
  "  line_id INTEGER NOT NULL REFERENCES sale_line (id) ON DELETE CASCADE,\n" \
  "  who TEXT,\n" \
  "  units REAL NOT NULL CHECK (units > 0),\n" \
  "  paid INTEGER NOT NULL CHECK (paid IN (0, 1)),\n" \
  /* The tap that it became. */ \
  "  tap_id INTEGER UNIQUE REFERENCES sale_tap (id),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_order_sale ON sale_order (sale_id);\n" \
  "CREATE INDEX sale_order_line ON sale_order (line_id);\n" \
  /* One tap on the tally; one that was wrong is named by the one that takes it back. */ \
  "CREATE TABLE sale_tap (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  line_id INTEGER NOT NULL REFERENCES sale_line (id) ON DELETE CASCADE,\n" \
  "  at INTEGER NOT NULL,\n" \
  "  kind TEXT NOT NULL CHECK (kind IN ('sold', 'sample', 'given', 'spoiled')),\n" \
  "  units REAL NOT NULL CHECK (units <> 0),\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),\n" \
  "  back_id INTEGER UNIQUE REFERENCES sale_tap (id),\n" \
  "  CHECK ((units < 0) = (back_id IS NOT NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_tap_line ON sale_tap (line_id, at);\n" \
  "CREATE TABLE sale_left (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  line_id INTEGER NOT NULL REFERENCES sale_line (id) ON DELETE CASCADE,\n" \
  "  goes_to TEXT NOT NULL CHECK (goes_to IN ('store', 'kitchen', 'given', 'waste')),\n" \
  "  units REAL NOT NULL CHECK (units > 0),\n" \
  "  reason TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX sale_left_line ON sale_left (line_id);\n" \
  "ALTER TABLE movement ADD COLUMN sale_id INTEGER REFERENCES sale_day (id);\n" \
  "ALTER TABLE movement ADD COLUMN sale_line_id INTEGER REFERENCES sale_line (id);\n" \
  "ALTER TABLE cash_line ADD COLUMN sale_id INTEGER REFERENCES sale_day (id);\n" \
  /* Cash-up: counted by two, posted once. */ \
  "ALTER TABLE cash_count ADD COLUMN sale_id INTEGER REFERENCES sale_day (id);\n" \
  "CREATE UNIQUE INDEX cash_count_sale ON cash_count (sale_id) WHERE sale_id IS NOT NULL;\n" \
  "CREATE INDEX movement_sale ON movement (sale_id) WHERE sale_id IS NOT NULL;\n" \
  "CREATE INDEX movement_sale_line ON movement (sale_line_id) WHERE sale_line_id IS NOT NULL;\n" \
  "CREATE INDEX movement_day ON movement (day);\n" \
  "CREATE INDEX cash_line_sale ON cash_line (sale_id) WHERE sale_id IS NOT NULL;\n"

/* Who worked when, and at what.  One that an advisor checked stays; another corrects it. */
#define WORK \
  "CREATE TABLE work_span (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id),\n" \
  "  day INTEGER NOT NULL,\n" \
  /* NULL: only how long is known. */ \
  "  from_at INTEGER,\n" \
  "  to_at INTEGER CHECK (to_at >= from_at),\n" \
  "  minutes REAL NOT NULL CHECK (minutes BETWEEN 0 AND 1440),\n" \
  "  break_minutes REAL NOT NULL CHECK (break_minutes BETWEEN 0 AND 1440),\n" \
  "  duty TEXT NOT NULL CHECK (length (duty) BETWEEN 1 AND 200),\n" \
  "  paid INTEGER NOT NULL CHECK (paid IN (0, 1)),\n" \
  "  batch_id INTEGER REFERENCES batch (id),\n" \
  "  sale_id INTEGER REFERENCES sale_day (id),\n" \
  "  note TEXT,\n" \
  "  entered_on INTEGER NOT NULL,\n" \
  "  checked_by INTEGER REFERENCES person (id),\n" \
  "  checked_on INTEGER,\n" \
  "  corrects_id INTEGER UNIQUE REFERENCES work_span (id),\n" \
  "  CHECK ((from_at IS NULL) = (to_at IS NULL)),\n" \
  "  CHECK ((checked_by IS NULL) = (checked_on IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX work_span_person ON work_span (person_id, day);\n" \
  "CREATE INDEX work_span_day ON work_span (day);\n" \
  "CREATE INDEX work_span_batch ON work_span (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX work_span_sale ON work_span (sale_id) WHERE sale_id IS NOT NULL;\n" \
  "CREATE TRIGGER work_span_checked_update BEFORE UPDATE ON work_span WHEN OLD.checked_on IS NOT NULL BEGIN\n" \
  "  SELECT RAISE (ABORT, 'signed');\n" \
  "END;\n" \
  "CREATE TRIGGER work_span_checked_delete BEFORE DELETE ON work_span WHEN OLD.checked_on IS NOT NULL BEGIN\n" \
  "  SELECT RAISE (ABORT, 'signed');\n" \
  "END;\n"

/* What if: a named set of assumptions about a product; those not named are as the farm has
 * them.  And what was sold at which price, from before the farm kept sale days. */
#define PRICING \
  "CREATE TABLE scenario_value (\n" \
  "  product_id INTEGER NOT NULL REFERENCES product (id) ON DELETE CASCADE,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  knob TEXT NOT NULL CHECK (length (knob) BETWEEN 1 AND 40),\n" \
  /* Minor units, units sold, or a multiple of what the farm has: the knob says which. */ \
  "  value REAL NOT NULL CHECK (value >= 0),\n" \
  "  PRIMARY KEY (product_id, name, knob)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE TABLE price_trial (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  product_id INTEGER NOT NULL REFERENCES product (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),\n" \
  "  units REAL NOT NULL CHECK (units >= 0),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX price_trial_product ON price_trial (product_id, day, id);\n"

const char stead_schema_step_4[] =
  INSTRUMENT LOCAL_LIMIT SALE CHECKLIST READING SIGNING WORK PRICING BUILD BUILD_BILL BUILD_MONEY;
