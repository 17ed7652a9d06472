/* stead-schema-build-private.h - the part of the fourth schema step that holds builds.
 *
 * A build is what the farm wants to put up: a pen, a poultry run, a hoop house, or a list
 * of things to buy.  What its drawing takes is worked out, never stored; a line of the
 * bill holds what people said about it: a price, an amount of their own, who gave it.
 */
#pragma once

/* Words of parts: what a sum may be bound to, and under what a line stands. */
#define BUILD_PARTS "('fence', 'gate', 'shelter', 'ground', 'cover', 'animals', 'other')"

#define BUILD \
  "CREATE TABLE build (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  kind TEXT NOT NULL CHECK (kind IN ('pen', 'run', 'hoop', 'list')),\n" \
  "  begun_on INTEGER NOT NULL,\n" \
  "  goal_on INTEGER,\n" \
  "  finished_on INTEGER CHECK (finished_on >= begun_on),\n" \
  /* Who lives in it: a word of data/rules ("goat"), and the allowance that was chosen. */ \
  "  animal TEXT,\n" \
  "  head INTEGER NOT NULL CHECK (head BETWEEN 0 AND 100000),\n" \
  "  housing TEXT,\n" \
  /* The farm's own figures for one animal; NULL: those of the table. */ \
  "  housed_each_m2 REAL CHECK (housed_each_m2 > 0),\n" \
  "  yard_each_m2 REAL CHECK (yard_each_m2 > 0),\n" \
  "  fence TEXT NOT NULL CHECK (fence IN ('woven', 'boards', 'electric', 'none')),\n" \
  /* Of the fence, of the run, or of the hoop house in its middle; 0: half its width. */ \
  "  height_m REAL NOT NULL CHECK (height_m BETWEEN 0 AND 20),\n" \
  /* Of line posts or of bows. */ \
  "  spacing_m REAL NOT NULL CHECK (spacing_m > 0 AND spacing_m <= 100),\n" \
  /* Wires of the fabric or of the electric fence; boards above each other. */ \
  "  rows INTEGER NOT NULL CHECK (rows BETWEEN 0 AND 40),\n" \
  "  roll_m REAL NOT NULL CHECK (roll_m > 0 AND roll_m <= 2000),\n" \
  "  roll_width_m REAL NOT NULL CHECK (roll_width_m > 0 AND roll_width_m <= 50),\n" \
  "  apron_m REAL NOT NULL CHECK (apron_m BETWEEN 0 AND 5),\n" \
  "  hole_m REAL NOT NULL CHECK (hole_m > 0 AND hole_m <= 2),\n" \
  "  post_m REAL NOT NULL CHECK (post_m > 0 AND post_m <= hole_m),\n" \
  "  depth_m REAL NOT NULL CHECK (depth_m > 0 AND depth_m <= 5),\n" \
  "  frost_m REAL CHECK (frost_m BETWEEN 0 AND 5),\n" \
  "  bag_lb INTEGER NOT NULL CHECK (bag_lb IN (40, 60, 80)),\n" \
  "  wire_waste REAL NOT NULL CHECK (wire_waste BETWEEN 0 AND 1),\n" \
  "  wood_waste REAL NOT NULL CHECK (wood_waste BETWEEN 0 AND 1),\n" \
  "  mix_waste REAL NOT NULL CHECK (mix_waste BETWEEN 0 AND 1),\n" \
  "  bed_m REAL NOT NULL CHECK (bed_m BETWEEN 0 AND 2),\n" \
  "  tax_frac REAL NOT NULL CHECK (tax_frac BETWEEN 0 AND 1),\n" \
  "  contingency_frac REAL NOT NULL CHECK (contingency_frac BETWEEN 0 AND 1),\n" \
  /* Of what sale days clear, the share put aside for it; and of the spread, the season's. */ \
  "  sale_frac REAL NOT NULL CHECK (sale_frac BETWEEN 0 AND 1),\n" \
  "  season_frac REAL NOT NULL CHECK (season_frac BETWEEN 0 AND 1),\n" \
  /* Where the free money for it lies in the cash book. */ \
  "  fund_id INTEGER REFERENCES fund (id),\n" \
  "  dig_on INTEGER,\n" \
  "  notice_days INTEGER NOT NULL CHECK (notice_days BETWEEN 0 AND 60),\n" \
  "  called_on INTEGER,\n" \
  "  permit_on INTEGER,\n" \
  /* The thing in the books that it became. */ \
  "  asset_id INTEGER UNIQUE REFERENCES asset (id),\n" \
  "  note TEXT,\n" \
  "  CHECK ((animal IS NULL) = (head = 0))\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_fund_of ON build (fund_id) WHERE fund_id IS NOT NULL;\n" \
  /* Round the plan; a side goes from its corner to the next. */ \
  "CREATE TABLE build_corner (\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  x_m REAL NOT NULL CHECK (x_m BETWEEN -10000 AND 10000),\n" \
  "  y_m REAL NOT NULL CHECK (y_m BETWEEN -10000 AND 10000),\n" \
  /* How much the ground rises along the side, and in how many level steps the fence does. */ \
  "  rise_m REAL NOT NULL CHECK (rise_m BETWEEN -100 AND 100),\n" \
  "  steps INTEGER NOT NULL CHECK (steps BETWEEN 0 AND 100),\n" \
  "  PRIMARY KEY (build_id, position)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE TABLE build_gate (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  side INTEGER NOT NULL CHECK (side >= 0),\n" \
  "  offset_m REAL NOT NULL CHECK (offset_m >= 0),\n" \
  "  width_m REAL NOT NULL CHECK (width_m > 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_gate_build ON build_gate (build_id, side);\n" \
  /* A shed with one slope, open in front. */ \
  "CREATE TABLE build_shelter (\n" \
  "  build_id INTEGER PRIMARY KEY REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  x_m REAL NOT NULL,\n" \
  "  y_m REAL NOT NULL,\n" \
  /* Where its open side looks: 0 down the plan, then quarter turns. */ \
  "  turn INTEGER NOT NULL CHECK (turn BETWEEN 0 AND 3),\n" \
  "  wall_m REAL NOT NULL CHECK (wall_m > 0 AND wall_m <= 100),\n" \
  "  depth_m REAL NOT NULL CHECK (depth_m > 0 AND depth_m <= 100),\n" \
  "  front_m REAL NOT NULL CHECK (front_m >= rear_m AND front_m <= 10),\n" \
  "  rear_m REAL NOT NULL CHECK (rear_m > 0),\n" \
  "  overhang_front_m REAL NOT NULL CHECK (overhang_front_m BETWEEN 0 AND 5),\n" \
  "  overhang_rear_m REAL NOT NULL CHECK (overhang_rear_m BETWEEN 0 AND 5),\n" \
  "  end_m REAL NOT NULL CHECK (end_m BETWEEN 0 AND 5),\n" \
  "  cover_m REAL NOT NULL CHECK (cover_m > 0 AND cover_m <= 5),\n" \
  "  rafter_spacing_m REAL NOT NULL CHECK (rafter_spacing_m > 0 AND rafter_spacing_m <= 10),\n" \
  "  post_spacing_m REAL NOT NULL CHECK (post_spacing_m > 0 AND post_spacing_m <= 20),\n" \
  "  post_depth_m REAL NOT NULL CHECK (post_depth_m BETWEEN 0 AND 5)\n" \
  ") STRICT;\n" \
  /* Lengths in which boards and posts of a size are sold. */ \
  "CREATE TABLE build_stock (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  size TEXT NOT NULL CHECK (length (size) BETWEEN 1 AND 40),\n" \
  "  length_m REAL NOT NULL CHECK (length_m > 0 AND length_m <= 100),\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),\n" \
  "  UNIQUE (build_id, size, length_m)\n" \
  ") STRICT;\n"

#define BUILD_BILL \
  "CREATE TABLE build_line (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  part TEXT NOT NULL CHECK (part IN " BUILD_PARTS "),\n" \
  /* What of the drawing it speaks about: "line_post"; NULL: a line of its own. */ \
  "  key TEXT CHECK (length (key) BETWEEN 1 AND 80),\n" \
  "  name TEXT CHECK (length (name) BETWEEN 1 AND 200),\n" \
  /* NULL: as the drawing says. */ \
  "  quantity REAL CHECK (quantity >= 0),\n" \
  "  unit TEXT,\n" \
  /* Sold by so many: a box of 500 staples. */ \
  "  pack REAL NOT NULL CHECK (pack > 0),\n" \
  "  price_cents INTEGER CHECK (price_cents >= 0),\n" \
  "  given INTEGER NOT NULL CHECK (given IN (0, 1)),\n" \
  "  giver TEXT,\n" \
  "  taxed INTEGER NOT NULL CHECK (taxed IN (0, 1)),\n" \
  "  left_out INTEGER NOT NULL CHECK (left_out IN (0, 1)),\n" \
  /* The purchase that it became. */ \
  "  receipt_line_id INTEGER UNIQUE REFERENCES receipt_line (id) ON DELETE SET NULL,\n" \
  "  note TEXT,\n" \
  "  CHECK (key IS NOT NULL OR (name IS NOT NULL AND quantity IS NOT NULL)),\n" \
  "  UNIQUE (build_id, key)\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_line_build ON build_line (build_id, position);\n" \
  "CREATE TABLE build_quote (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  line_id INTEGER NOT NULL REFERENCES build_line (id) ON DELETE CASCADE,\n" \
  "  supplier TEXT NOT NULL CHECK (length (supplier) BETWEEN 1 AND 200),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),\n" \
  "  note TEXT,\n" \
  "  UNIQUE (line_id, supplier, day)\n" \
  ") STRICT;\n" \
  /* The work, in the order of doing it. */ \
  "CREATE TABLE build_phase (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  hours REAL NOT NULL CHECK (hours BETWEEN 0 AND 100000),\n" \
  "  from_day INTEGER,\n" \
  "  to_day INTEGER CHECK (to_day >= from_day),\n" \
  "  done_on INTEGER,\n" \
  /* A word of data/rules/work.csv, and the full years of the youngest who do it. */ \
  "  task TEXT,\n" \
  "  age_years INTEGER CHECK (age_years BETWEEN 5 AND 99),\n" \
  /* Why an advisor allowed it. */ \
  "  decided TEXT,\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_phase_build ON build_phase (build_id, position);\n" \
  "ALTER TABLE work_span ADD COLUMN build_id INTEGER REFERENCES build (id);\n" \
  "ALTER TABLE work_span ADD COLUMN phase_id INTEGER REFERENCES build_phase (id) ON DELETE SET NULL;\n" \
  "CREATE INDEX work_span_build ON work_span (build_id) WHERE build_id IS NOT NULL;\n" \
  "CREATE INDEX work_span_phase ON work_span (phase_id) WHERE phase_id IS NOT NULL;\n"

#define BUILD_MONEY \
  /* Funds that are bound: grants for this build, or for one part of it alone. */ \
  "CREATE TABLE build_grant (\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  fund_id INTEGER NOT NULL REFERENCES fund (id),\n" \
  "  part TEXT CHECK (part IN " BUILD_PARTS "),\n" \
  "  PRIMARY KEY (build_id, fund_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX build_grant_fund ON build_grant (fund_id);\n" \
  "CREATE TABLE build_pledge (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  who TEXT NOT NULL CHECK (length (who) BETWEEN 1 AND 200),\n" \
  "  cents INTEGER NOT NULL CHECK (cents > 0),\n" \
  "  chance REAL NOT NULL CHECK (chance BETWEEN 0 AND 1),\n" \
  "  pledged_on INTEGER NOT NULL,\n" \
  "  due_on INTEGER NOT NULL,\n" \
  /* Bound to one part; NULL: to none. */ \
  "  part TEXT CHECK (part IN " BUILD_PARTS "),\n" \
  /* The line of the cash book that received it. */ \
  "  cash_line_id INTEGER UNIQUE REFERENCES cash_line (id) ON DELETE SET NULL,\n" \
  "  withdrawn_on INTEGER CHECK (withdrawn_on >= pledged_on),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_pledge_build ON build_pledge (build_id, due_on);\n" \
  /* Money that is planned: sums that come again and again, and how much they vary. */ \
  "CREATE TABLE build_income (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  product_id INTEGER REFERENCES product (id),\n" \
  "  first_on INTEGER NOT NULL,\n" \
  "  every_days INTEGER NOT NULL CHECK (every_days BETWEEN 1 AND 366),\n" \
  "  times INTEGER NOT NULL CHECK (times BETWEEN 1 AND 500),\n" \
  "  mean_cents INTEGER NOT NULL CHECK (mean_cents > 0),\n" \
  "  sd_cents INTEGER NOT NULL CHECK (sd_cents >= 0),\n" \
  "  is_sale INTEGER NOT NULL CHECK (is_sale IN (0, 1))\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_income_build ON build_income (build_id, position);\n" \
  "CREATE INDEX build_income_product ON build_income (product_id) WHERE product_id IS NOT NULL;\n" \
  /* What it costs each year once it stands. */ \
  "CREATE TABLE build_upkeep (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  build_id INTEGER NOT NULL REFERENCES build (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  /* So many a year, for each animal or for the whole. */ \
  "  quantity REAL NOT NULL CHECK (quantity >= 0),\n" \
  "  unit TEXT,\n" \
  "  per_head INTEGER NOT NULL CHECK (per_head IN (0, 1)),\n" \
  "  price_cents INTEGER NOT NULL CHECK (price_cents >= 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_upkeep_build ON build_upkeep (build_id, position);\n"
