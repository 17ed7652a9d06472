/* stead-schema-3.c - the third step of the schema: what is cooked, kept and banked.
 *
 * A kitchen batch keeps its own copy of the recipe's parts and steps, so that a
 * recipe changed in May does not change what was cooked in March.  What came out
 * of it is a harvest, as of any batch.  Times of a day are seconds since 1970
 * (UTC).  Cash says when money moved; it never makes cost.
 */
#include "config.h"

#include "store/stead-schema-private.h"

/* Parts of the farm that are looked at on their own: eggs, fish, tomatoes, sauces. */
#define ENTERPRISE \
  "CREATE TABLE enterprise (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200)\n" \
  ") STRICT;\n" \
  "ALTER TABLE batch ADD COLUMN enterprise_id INTEGER REFERENCES enterprise (id);\n" \
  "ALTER TABLE product ADD COLUMN enterprise_id INTEGER REFERENCES enterprise (id);\n" \
  "CREATE INDEX batch_enterprise ON batch (enterprise_id) WHERE enterprise_id IS NOT NULL;\n" \
  "CREATE INDEX product_enterprise ON product (enterprise_id) WHERE enterprise_id IS NOT NULL;\n"

/* What stands on a label, and how goods out of the store room are costed. */
#define FARM \
  "ALTER TABLE farm ADD COLUMN address TEXT;\n" \
  "ALTER TABLE farm ADD COLUMN phone TEXT;\n" \
  "ALTER TABLE farm ADD COLUMN cost_method TEXT NOT NULL DEFAULT 'fifo'\n" \
  "  CHECK (cost_method IN ('fifo', 'average'));\n"

/* How cups become pounds, and what of a thing bought can be eaten. */
#define ITEM \
  "ALTER TABLE item ADD COLUMN density_kg_l REAL CHECK (density_kg_l BETWEEN 0.01 AND 25);\n" \
  "ALTER TABLE item ADD COLUMN piece_kg REAL CHECK (piece_kg > 0 AND piece_kg <= 1000);\n" \
  "ALTER TABLE item ADD COLUMN measure_source TEXT;\n" \
  "ALTER TABLE item ADD COLUMN yield_frac REAL NOT NULL DEFAULT 1\n" \
  "  CHECK (yield_frac > 0 AND yield_frac <= 1);\n" \
  /* The words of the limit tables for it: "raw_shell_eggs"; NULL: not said. */ \
  "ALTER TABLE item ADD COLUMN food TEXT;\n" \
  /* What stands on a label instead of the name; compound ingredients name their own. */ \
  "ALTER TABLE item ADD COLUMN label_name TEXT;\n"

#define LOT \
  "ALTER TABLE lot ADD COLUMN place_id INTEGER REFERENCES place (id);\n" \
  "CREATE INDEX lot_place ON lot (place_id) WHERE place_id IS NOT NULL;\n" \
  /* What was tasted or kept for the record is neither good nor lost. */ \
  "ALTER TABLE harvest ADD COLUMN tasted_base REAL NOT NULL DEFAULT 0 CHECK (tasted_base >= 0);\n" \
  /* Which item of the store room is sold as this product; NULL: not kept in lots. */ \
  "ALTER TABLE product ADD COLUMN item_id INTEGER REFERENCES item (id);\n" \
  "CREATE INDEX product_item ON product (item_id) WHERE item_id IS NOT NULL;\n" \
  /* A count of the store room; lines that agreed are kept too. */ \
  "CREATE TABLE stock_count (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  second_id INTEGER REFERENCES person (id),\n" \
  "  note TEXT,\n" \
  "  CHECK (person_id IS NULL OR second_id IS NULL OR person_id <> second_id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX stock_count_day ON stock_count (day);\n" \
  "CREATE TABLE stock_count_line (\n" \
  "  count_id INTEGER NOT NULL REFERENCES stock_count (id) ON DELETE CASCADE,\n" \
  "  lot_id INTEGER NOT NULL REFERENCES lot (id),\n" \
  "  expected_base REAL NOT NULL CHECK (expected_base >= 0),\n" \
  "  counted_base REAL NOT NULL CHECK (counted_base >= 0),\n" \
  /* The movement that made the record agree; NULL: it did already. */ \
  "  movement_id INTEGER UNIQUE REFERENCES movement (id),\n" \
  "  PRIMARY KEY (count_id, lot_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX stock_count_line_lot ON stock_count_line (lot_id);\n"

/* Amounts are kept as they were written, in a unit of their own: 3 cup. */
#define RECIPE \
  "CREATE TABLE recipe (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  item_id INTEGER NOT NULL REFERENCES item (id),\n" \
  "  yield_base REAL NOT NULL CHECK (yield_base > 0),\n" \
  "  minutes REAL NOT NULL CHECK (minutes BETWEEN 0 AND 14400),\n" \
  "  equipment TEXT,\n" \
  "  note TEXT,\n" \
  /* How it is kept until it is sold, and what decides what kind of food it is. */ \
  "  kept TEXT NOT NULL CHECK (kept IN ('hot', 'cold', 'frozen', 'room')),\n" \
  "  sealed INTEGER NOT NULL CHECK (sealed IN (0, 1)),\n" \
  "  acid_added INTEGER NOT NULL CHECK (acid_added IN (0, 1)),\n" \
  "  tomato INTEGER NOT NULL CHECK (tomato IN (0, 1)),\n" \
  "  ph REAL CHECK (ph BETWEEN 0 AND 14),\n" \
  "  ph_on INTEGER,\n" \
  "  aw REAL CHECK (aw BETWEEN 0 AND 1),\n" \
  "  jar TEXT,\n" \
  /* The published process that it follows word for word: "standard_tomato_sauce". */ \
  "  process TEXT,\n" \
  /* Who approved it for sale, and under which number. */ \
  "  authority TEXT,\n" \
  "  authority_on INTEGER,\n" \
  "  retired_on INTEGER,\n" \
  "  CHECK ((ph IS NULL) = (ph_on IS NULL)),\n" \
  "  CHECK ((authority IS NULL) = (authority_on IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX recipe_item ON recipe (item_id);\n" \
  "CREATE TABLE recipe_part (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  recipe_id INTEGER NOT NULL REFERENCES recipe (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  /* An item out of the store room, or another recipe made along with this one. */ \
  "  item_id INTEGER REFERENCES item (id),\n" \
  "  sub_id INTEGER REFERENCES recipe (id),\n" \
  "  amount REAL NOT NULL CHECK (amount > 0),\n" \
  "  unit TEXT NOT NULL,\n" \
  /* Ready for the pot, or as it was bought. */ \
  "  ready INTEGER NOT NULL CHECK (ready IN (0, 1)),\n" \
  /* Of this use; NULL: the item's own. */ \
  "  yield_frac REAL CHECK (yield_frac > 0 AND yield_frac <= 1),\n" \
  "  note TEXT,\n" \
  "  CHECK ((item_id IS NULL) <> (sub_id IS NULL)),\n" \
  "  CHECK (sub_id IS NULL OR sub_id <> recipe_id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX recipe_part_recipe ON recipe_part (recipe_id, position);\n" \
  "CREATE INDEX recipe_part_item ON recipe_part (item_id) WHERE item_id IS NOT NULL;\n" \
  "CREATE INDEX recipe_part_sub ON recipe_part (sub_id) WHERE sub_id IS NOT NULL;\n" \
  "CREATE TABLE recipe_step (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  recipe_id INTEGER NOT NULL REFERENCES recipe (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  text TEXT NOT NULL CHECK (length (text) BETWEEN 1 AND 4000),\n" \
  "  minutes REAL CHECK (minutes BETWEEN 0 AND 14400),\n" \
  /* The step and the food in the words of the limit tables: "cook", "raw_egg". */ \
  "  step TEXT,\n" \
  "  food TEXT,\n" \
  /* The recipe's own, where it asks for more than the limit. */ \
  "  least_c REAL CHECK (least_c BETWEEN -60 AND 300),\n" \
  "  most_c REAL CHECK (most_c BETWEEN -60 AND 300),\n" \
  "  hold_s REAL CHECK (hold_s >= 0),\n" \
  "  CHECK (least_c <= most_c)\n" \
  ") STRICT;\n" \
  "CREATE INDEX recipe_step_recipe ON recipe_step (recipe_id, position);\n"

#define KITCHEN \
  "CREATE TABLE kitchen (\n" \
  "  batch_id INTEGER PRIMARY KEY REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  recipe_id INTEGER NOT NULL REFERENCES recipe (id),\n" \
  "  wanted_base REAL NOT NULL CHECK (wanted_base > 0),\n" \
  "  minutes REAL NOT NULL CHECK (minutes >= 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX kitchen_recipe ON kitchen (recipe_id);\n" \
  "CREATE TABLE kitchen_part (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES kitchen (batch_id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  item_id INTEGER NOT NULL REFERENCES item (id),\n" \
  /* As bought, in the item's base unit; and as the cook measures it. */ \
  "  need_base REAL NOT NULL CHECK (need_base > 0),\n" \
  "  amount REAL NOT NULL CHECK (amount > 0),\n" \
  "  unit TEXT NOT NULL,\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX kitchen_part_batch ON kitchen_part (batch_id, position);\n" \
  "CREATE INDEX kitchen_part_item ON kitchen_part (item_id);\n" \
  "CREATE TABLE kitchen_step (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  batch_id INTEGER NOT NULL REFERENCES kitchen (batch_id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  text TEXT NOT NULL CHECK (length (text) BETWEEN 1 AND 4000),\n" \
  "  minutes REAL CHECK (minutes BETWEEN 0 AND 14400),\n" \
  "  step TEXT,\n" \
  "  food TEXT,\n" \
  "  least_c REAL,\n" \
  "  most_c REAL,\n" \
  "  hold_s REAL CHECK (hold_s >= 0),\n" \
  "  started_at INTEGER,\n" \
  "  done_at INTEGER CHECK (started_at <= done_at),\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX kitchen_step_batch ON kitchen_step (batch_id, position);\n" \
  /* Who worked on a batch, and how long. */ \
  "CREATE TABLE batch_person (\n" \
  "  batch_id INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id),\n" \
  "  minutes REAL NOT NULL CHECK (minutes BETWEEN 0 AND 14400),\n" \
  "  PRIMARY KEY (batch_id, person_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX batch_person_person ON batch_person (person_id);\n" \
  /* What an instrument showed.  A wrong one stays; a right one names it. */ \
  "CREATE TABLE reading (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  at INTEGER NOT NULL,\n" \
  "  kind TEXT NOT NULL CHECK (length (kind) BETWEEN 1 AND 40),\n" \
  "  value REAL NOT NULL,\n" \
  "  batch_id INTEGER REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  step_id INTEGER REFERENCES kitchen_step (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  note TEXT,\n" \
  "  corrects_id INTEGER REFERENCES reading (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX reading_at ON reading (at);\n" \
  "CREATE INDEX reading_batch ON reading (batch_id, at) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX reading_step ON reading (step_id, at) WHERE step_id IS NOT NULL;\n" \
  "CREATE INDEX reading_corrects ON reading (corrects_id) WHERE corrects_id IS NOT NULL;\n"

#define CASH \
  "CREATE TABLE account (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  kind TEXT NOT NULL CHECK (kind IN ('till', 'activity', 'bank')),\n" \
  "  opened_on INTEGER NOT NULL,\n" \
  "  opening_cents INTEGER NOT NULL,\n" \
  "  closed_on INTEGER CHECK (closed_on >= opened_on)\n" \
  ") STRICT;\n" \
  /* Money that may be used for one thing only; no fund: for anything. */ \
  "CREATE TABLE fund (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  purpose TEXT,\n" \
  "  closed_on INTEGER\n" \
  ") STRICT;\n" \
  "CREATE TABLE cash_line (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  account_id INTEGER NOT NULL REFERENCES account (id),\n" \
  "  cents INTEGER NOT NULL CHECK (cents <> 0),\n" \
  "  category TEXT NOT NULL CHECK (length (category) BETWEEN 1 AND 40),\n" \
  "  fund_id INTEGER REFERENCES fund (id),\n" \
  "  enterprise_id INTEGER REFERENCES enterprise (id),\n" \
  "  who TEXT,\n" \
  "  reference TEXT,\n" \
  "  note TEXT,\n" \
  "  receipt_id INTEGER REFERENCES receipt (id),\n" \
  "  batch_id INTEGER REFERENCES batch (id),\n" \
  "  product_id INTEGER REFERENCES product (id),\n" \
  "  asset_id INTEGER REFERENCES asset (id),\n" \
  /* The other half of money that went from one account or fund to another. */ \
  "  pair_id INTEGER REFERENCES cash_line (id),\n" \
  "  picture_id INTEGER REFERENCES picture (id),\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  second_id INTEGER REFERENCES person (id),\n" \
  "  corrects_id INTEGER REFERENCES cash_line (id),\n" \
  "  CHECK (person_id IS NULL OR second_id IS NULL OR person_id <> second_id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX cash_line_day ON cash_line (day, id);\n" \
  "CREATE INDEX cash_line_account ON cash_line (account_id, day, cents);\n" \
  "CREATE INDEX cash_line_fund ON cash_line (fund_id, day, cents) WHERE fund_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_receipt ON cash_line (receipt_id) WHERE receipt_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_batch ON cash_line (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_product ON cash_line (product_id, day) WHERE product_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_asset ON cash_line (asset_id) WHERE asset_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_pair ON cash_line (pair_id) WHERE pair_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_corrects ON cash_line (corrects_id) WHERE corrects_id IS NOT NULL;\n" \
  "CREATE INDEX cash_line_picture ON cash_line (picture_id) WHERE picture_id IS NOT NULL;\n" \
  "CREATE TABLE receipt_picture (\n" \
  "  receipt_id INTEGER NOT NULL REFERENCES receipt (id) ON DELETE CASCADE,\n" \
  "  picture_id INTEGER NOT NULL REFERENCES picture (id),\n" \
  "  PRIMARY KEY (receipt_id, picture_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX receipt_picture_picture ON receipt_picture (picture_id);\n" \
  /* Two people counted an account's money. */ \
  "CREATE TABLE cash_count (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  account_id INTEGER NOT NULL REFERENCES account (id),\n" \
  "  expected_cents INTEGER NOT NULL,\n" \
  "  float_cents INTEGER NOT NULL CHECK (float_cents >= 0),\n" \
  "  first_id INTEGER NOT NULL REFERENCES person (id),\n" \
  "  second_id INTEGER NOT NULL REFERENCES person (id),\n" \
  /* Over or short: why, and the line of the book that says so. */ \
  "  reason TEXT,\n" \
  "  line_id INTEGER UNIQUE REFERENCES cash_line (id),\n" \
  "  note TEXT,\n" \
  "  CHECK (first_id <> second_id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX cash_count_account ON cash_count (account_id, day);\n" \
  "CREATE TABLE cash_count_piece (\n" \
  "  count_id INTEGER NOT NULL REFERENCES cash_count (id) ON DELETE CASCADE,\n" \
  "  face_cents INTEGER NOT NULL CHECK (face_cents > 0),\n" \
  "  pieces INTEGER NOT NULL CHECK (pieces >= 0),\n" \
  "  PRIMARY KEY (count_id, face_cents)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  /* What the bank or the school's bookkeeper says happened. */ \
  "CREATE TABLE bank_sheet (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  account_id INTEGER NOT NULL REFERENCES account (id),\n" \
  "  through_day INTEGER NOT NULL,\n" \
  "  closing_cents INTEGER NOT NULL,\n" \
  "  agreed_on INTEGER,\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  UNIQUE (account_id, through_day)\n" \
  ") STRICT;\n" \
  "CREATE TABLE bank_line (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  account_id INTEGER NOT NULL REFERENCES account (id),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  cents INTEGER NOT NULL CHECK (cents <> 0),\n" \
  "  text TEXT,\n" \
  "  line_id INTEGER UNIQUE REFERENCES cash_line (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX bank_line_account ON bank_line (account_id, day, cents);\n"

#define ASSET \
  /* How batches share it: by fixed parts, by days, by space, by what they used. */ \
  "ALTER TABLE asset ADD COLUMN share_by TEXT NOT NULL DEFAULT 'parts'\n" \
  "  CHECK (share_by IN ('parts', 'days', 'space', 'use'));\n" \
  "ALTER TABLE asset ADD COLUMN gone_cents INTEGER CHECK (gone_cents >= 0);\n"

/* Up to a day that is closed, what has to do with money stays as it is. */
#define LOCK(table) \
  "CREATE TRIGGER " table "_closed_insert BEFORE INSERT ON " table "\n" \
  "WHEN NEW.day <= (SELECT max (through_day) FROM closing) BEGIN\n" \
  "  SELECT RAISE (ABORT, 'closed');\n" \
  "END;\n" \
  "CREATE TRIGGER " table "_closed_update BEFORE UPDATE ON " table "\n" \
  "WHEN min (OLD.day, NEW.day) <= (SELECT max (through_day) FROM closing) BEGIN\n" \
  "  SELECT RAISE (ABORT, 'closed');\n" \
  "END;\n" \
  "CREATE TRIGGER " table "_closed_delete BEFORE DELETE ON " table "\n" \
  "WHEN OLD.day <= (SELECT max (through_day) FROM closing) BEGIN\n" \
  "  SELECT RAISE (ABORT, 'closed');\n" \
  "END;\n"

#define CLOSING \
  "CREATE TABLE closing (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  through_day INTEGER NOT NULL UNIQUE,\n" \
  "  closed_on INTEGER NOT NULL CHECK (closed_on > through_day),\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  LOCK ("movement") LOCK ("receipt") LOCK ("harvest") LOCK ("cash_line") LOCK ("cash_count") LOCK ("asset_use")

const char stead_schema_step_3[] =
  ENTERPRISE FARM ITEM LOT RECIPE KITCHEN CASH ASSET CLOSING;
