/* stead-schema-buy-private.h - the part of the fifth schema step that holds what was bought
 * for a build.
 *
 * What was paid, when, to whom and out of which fund stands in the cash book; a row here
 * says which line of a bill it was for.
 */
#pragma once

#define BUILD_BUY \
  "CREATE TABLE build_buy (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  line_id INTEGER NOT NULL REFERENCES build_line (id) ON DELETE CASCADE,\n" \
  /* The line of the cash book that paid for it; NULL: it was given on the day. */ \
  "  cash_line_id INTEGER REFERENCES cash_line (id) ON DELETE CASCADE,\n" \
  "  day INTEGER,\n" \
  "  packs REAL NOT NULL CHECK (packs > 0),\n" \
  /* Without tax; the fair value of what was given. */ \
  "  cents INTEGER NOT NULL CHECK (cents >= 0),\n" \
  "  tax_cents INTEGER NOT NULL CHECK (tax_cents >= 0),\n" \
  "  CHECK ((cash_line_id IS NULL) = (day IS NOT NULL)),\n" \
  "  CHECK (cash_line_id IS NOT NULL OR tax_cents = 0)\n" \
  ") STRICT;\n" \
  "CREATE INDEX build_buy_line ON build_buy (line_id);\n" \
  "CREATE INDEX build_buy_cash ON build_buy (cash_line_id) WHERE cash_line_id IS NOT NULL;\n" \
  /* Who it is to be bought from; and the last day on which the giver lets a grant be spent. */ \
  "ALTER TABLE build_line ADD COLUMN supplier TEXT CHECK (length (supplier) BETWEEN 1 AND 200);\n" \
  "ALTER TABLE build_grant ADD COLUMN use_by INTEGER;\n"
