/* stead-schema-price-private.h - the part of the fifth step that is about prices and cost. */
#pragma once

/* One batch, several products: how they share its cost, and what the log cannot tell. */
#define JOINT \
  "CREATE TABLE joint_split (\n" \
  "  batch_id INTEGER PRIMARY KEY REFERENCES batch (id) ON DELETE CASCADE,\n" \
  "  method TEXT NOT NULL CHECK (method IN ('physical', 'split_off', 'net_value', 'same_margin'))\n" \
  ") STRICT;\n" \
  "CREATE TABLE joint_figure (\n" \
  "  batch_id INTEGER NOT NULL REFERENCES joint_split (batch_id) ON DELETE CASCADE,\n" \
  "  part TEXT NOT NULL CHECK (length (part) BETWEEN 1 AND 40),\n" \
  "  field TEXT NOT NULL CHECK (field IN ('quantity', 'weight', 'split', 'final', 'further')),\n" \
  /* Units told (dozens, pounds), kg of one, or minor units for one. */ \
  "  value REAL NOT NULL CHECK (value >= 0),\n" \
  "  PRIMARY KEY (batch_id, part, field)\n" \
  ") STRICT, WITHOUT ROWID;\n"

/* The rate by which cost that belongs to no one batch is charged; there is one or none. */
#define OVERHEAD \
  "CREATE TABLE overhead (\n" \
  "  id INTEGER PRIMARY KEY CHECK (id = 1),\n" \
  "  base TEXT NOT NULL CHECK (base IN ('hours', 'space', 'money')),\n" \
  /* Of a year: minor units; and hours of work, m² × weeks, or minor units of other cost. */ \
  "  planned_cents INTEGER NOT NULL CHECK (planned_cents >= 0),\n" \
  "  planned_base REAL NOT NULL CHECK (planned_base > 0)\n" \
  ") STRICT;\n"
