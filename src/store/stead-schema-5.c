/* stead-schema-5.c - the fifth step of the schema: what each person does, learns and shows;
 * and what was bought for a build (stead-schema-buy-private.h).
 *
 * Nothing is asked of a person that the farm's work does not need: no address, no birthday,
 * no number of the school's, no word on health, family or conduct.
 */
#include "config.h"

#include "store/stead-schema-buy-private.h"
#include "store/stead-schema-price-private.h"
#include "store/stead-schema-private.h"

/* Who belongs together, who does what on which weekday, who is trained for what. */
#define PEOPLE \
  /* The name is gone and a role stands in its place; sums stay. */ \
  "ALTER TABLE person ADD COLUMN redacted_on INTEGER;\n" \
  /* The school's day for removing what is kept of somebody who left. */ \
  "ALTER TABLE person ADD COLUMN keep_until INTEGER;\n" \
  "CREATE TABLE person_group (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200)\n" \
  ") STRICT;\n" \
  "CREATE TABLE group_member (\n" \
  "  group_id INTEGER NOT NULL REFERENCES person_group (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  PRIMARY KEY (group_id, person_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX group_member_person ON group_member (person_id);\n" \
  "CREATE TABLE duty (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL UNIQUE CHECK (length (name) BETWEEN 1 AND 200),\n" \
  /* What one must be trained for to do it. */ \
  "  needs TEXT CHECK (length (needs) BETWEEN 1 AND 200),\n" \
  "  retired_on INTEGER\n" \
  ") STRICT;\n" \
  /* A turn comes each week on a weekday (1: Monday), to a person or to a whole group. */ \
  "CREATE TABLE rota_turn (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  duty_id INTEGER NOT NULL REFERENCES duty (id) ON DELETE CASCADE,\n" \
  "  weekday INTEGER NOT NULL CHECK (weekday BETWEEN 1 AND 7),\n" \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  group_id INTEGER REFERENCES person_group (id),\n" \
  /* Minutes since the farm's midnight. */ \
  "  at_minute INTEGER CHECK (at_minute BETWEEN 0 AND 1439),\n" \
  "  from_on INTEGER NOT NULL,\n" \
  "  to_on INTEGER CHECK (to_on >= from_on),\n" \
  "  CHECK ((person_id IS NULL) <> (group_id IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX rota_turn_duty ON rota_turn (duty_id);\n" \
  "CREATE INDEX rota_turn_person ON rota_turn (person_id) WHERE person_id IS NOT NULL;\n" \
  "CREATE INDEX rota_turn_group ON rota_turn (group_id) WHERE group_id IS NOT NULL;\n" \
  "CREATE TABLE training (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  subject TEXT NOT NULL CHECK (length (subject) BETWEEN 1 AND 200),\n" \
  "  given_on INTEGER NOT NULL,\n" \
  "  until_on INTEGER CHECK (until_on >= given_on),\n" \
  "  given_by INTEGER REFERENCES person (id),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX training_person ON training (person_id, given_on);\n" \
  "CREATE INDEX training_given_by ON training (given_by) WHERE given_by IS NOT NULL;\n" \
  /* What may be shown of whom; the signed paper stays with the school. */ \
  "CREATE TABLE consent (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  what TEXT NOT NULL CHECK (what IN ('name', 'picture', 'work')),\n" \
  "  given_on INTEGER NOT NULL,\n" \
  "  ended_on INTEGER CHECK (ended_on >= given_on),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX consent_person ON consent (person_id, what);\n"

/* Events that students prepare for, with what their packet is to hold. */
#define EVENTS \
  "CREATE TABLE event (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  /* A key of the program's, or the farm's own words. */ \
  "  kind TEXT NOT NULL CHECK (length (kind) BETWEEN 1 AND 200),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  place TEXT,\n" \
  "  result TEXT,\n" \
  "  learned TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX event_day ON event (day);\n" \
  "CREATE TABLE event_person (\n" \
  "  event_id INTEGER NOT NULL REFERENCES event (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id),\n" \
  "  role TEXT,\n" \
  "  PRIMARY KEY (event_id, person_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX event_person_person ON event_person (person_id);\n" \
  /* What the packet needs: a section of the program's by its key, or one of the farm's
   * own with its text; and material to bring. */ \
  "CREATE TABLE event_need (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  event_id INTEGER NOT NULL REFERENCES event (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL,\n" \
  "  what TEXT NOT NULL CHECK (what IN ('section', 'own', 'material')),\n" \
  "  words TEXT NOT NULL CHECK (length (words) BETWEEN 1 AND 200),\n" \
  "  text TEXT,\n" \
  "  done_on INTEGER,\n" \
  "  UNIQUE (event_id, position)\n" \
  ") STRICT;\n" \
  "CREATE TABLE event_score (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  event_id INTEGER NOT NULL REFERENCES event (id) ON DELETE CASCADE,\n" \
  /* NULL: of the whole team. */ \
  "  person_id INTEGER REFERENCES person (id),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  part TEXT,\n" \
  "  score REAL NOT NULL CHECK (score >= 0),\n" \
  "  out_of REAL NOT NULL CHECK (out_of > 0),\n" \
  "  is_final INTEGER NOT NULL DEFAULT 0 CHECK (is_final IN (0, 1)),\n" \
  "  note TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX event_score_event ON event_score (event_id, day);\n" \
  "CREATE INDEX event_score_person ON event_score (person_id) WHERE person_id IS NOT NULL;\n"

/* Hours belong to an event too; one may be running; and what was taken over from
 * work that the farm knows of is not offered again. */
#define HOURS \
  "ALTER TABLE work_span ADD COLUMN event_id INTEGER REFERENCES event (id);\n" \
  /* What it was offered for: \"eggs 20415\", \"readings 12\", \"stall 3\"; day numbers and row ids. */ \
  "ALTER TABLE work_span ADD COLUMN known_by TEXT;\n" \
  "CREATE INDEX work_span_event ON work_span (event_id) WHERE event_id IS NOT NULL;\n" \
  "CREATE UNIQUE INDEX work_span_known ON work_span (person_id, known_by) WHERE known_by IS NOT NULL;\n" \
  "CREATE TABLE work_timer (\n" \
  "  person_id INTEGER PRIMARY KEY REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  started_at INTEGER NOT NULL,\n" \
  "  duty TEXT NOT NULL CHECK (length (duty) BETWEEN 1 AND 200),\n" \
  /* Set while there is a break; and minutes of earlier breaks. */ \
  "  paused_at INTEGER CHECK (paused_at >= started_at),\n" \
  "  break_minutes REAL NOT NULL DEFAULT 0 CHECK (break_minutes BETWEEN 0 AND 1440),\n" \
  "  batch_id INTEGER REFERENCES batch (id) ON DELETE SET NULL,\n" \
  "  sale_id INTEGER REFERENCES sale_day (id) ON DELETE SET NULL,\n" \
  "  build_id INTEGER REFERENCES build (id) ON DELETE SET NULL,\n" \
  "  event_id INTEGER REFERENCES event (id) ON DELETE SET NULL\n" \
  ") STRICT;\n" \
  "CREATE INDEX work_timer_batch ON work_timer (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX work_timer_sale ON work_timer (sale_id) WHERE sale_id IS NOT NULL;\n" \
  "CREATE INDEX work_timer_build ON work_timer (build_id) WHERE build_id IS NOT NULL;\n" \
  "CREATE INDEX work_timer_event ON work_timer (event_id) WHERE event_id IS NOT NULL;\n"

/* Skills in the school's words, tries with what shows them, and thoughts on what happened. */
#define LEARNING \
  "CREATE TABLE skill (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  code TEXT UNIQUE CHECK (length (code) BETWEEN 1 AND 40),\n" \
  "  words TEXT NOT NULL CHECK (length (words) BETWEEN 1 AND 400),\n" \
  "  area TEXT,\n" \
  "  retired_on INTEGER\n" \
  ") STRICT;\n" \
  "CREATE TABLE skill_try (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  skill_id INTEGER NOT NULL REFERENCES skill (id),\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  /* 1: saw it, 2: did it with help, 3: does it alone, 4: shows it to others. */ \
  "  level INTEGER NOT NULL CHECK (level BETWEEN 1 AND 4),\n" \
  "  note TEXT,\n" \
  "  checked_by INTEGER REFERENCES person (id),\n" \
  "  checked_on INTEGER,\n" \
  "  CHECK ((checked_by IS NULL) = (checked_on IS NULL))\n" \
  ") STRICT;\n" \
  "CREATE INDEX skill_try_person ON skill_try (person_id, skill_id);\n" \
  "CREATE INDEX skill_try_skill ON skill_try (skill_id);\n" \
  "CREATE INDEX skill_try_checked ON skill_try (checked_by) WHERE checked_by IS NOT NULL;\n" \
  /* Rows of the log: what goes away there is said to be gone. */ \
  "CREATE TABLE skill_evidence (\n" \
  "  try_id INTEGER NOT NULL REFERENCES skill_try (id) ON DELETE CASCADE,\n" \
  "  what TEXT NOT NULL CHECK (what IN ('batch_entry', 'harvest', 'weighing', 'water_test', 'kitchen', 'checklist',\n" \
  "                                     'reading', 'receipt', 'product', 'sale_day', 'build', 'work_span', 'shot')),\n" \
  "  row_id INTEGER NOT NULL,\n" \
  "  PRIMARY KEY (try_id, what, row_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE TABLE reflection (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  day INTEGER NOT NULL,\n" \
  /* The question as it was asked, if one was. */ \
  "  question TEXT,\n" \
  "  text TEXT NOT NULL CHECK (length (text) BETWEEN 1 AND 20000),\n" \
  "  batch_id INTEGER REFERENCES batch (id),\n" \
  "  sale_id INTEGER REFERENCES sale_day (id),\n" \
  "  build_id INTEGER REFERENCES build (id),\n" \
  "  event_id INTEGER REFERENCES event (id),\n" \
  /* Chosen by the student for the packet. */ \
  "  is_shown INTEGER NOT NULL DEFAULT 0 CHECK (is_shown IN (0, 1))\n" \
  ") STRICT;\n" \
  "CREATE INDEX reflection_person ON reflection (person_id, day);\n" \
  "CREATE INDEX reflection_batch ON reflection (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX reflection_sale ON reflection (sale_id) WHERE sale_id IS NOT NULL;\n" \
  "CREATE INDEX reflection_build ON reflection (build_id) WHERE build_id IS NOT NULL;\n" \
  "CREATE INDEX reflection_event ON reflection (event_id) WHERE event_id IS NOT NULL;\n" \
  /* A goal with what came of it; a role that was held, or a service done. */ \
  "CREATE TABLE goal (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  words TEXT NOT NULL CHECK (length (words) BETWEEN 1 AND 1000),\n" \
  "  set_on INTEGER NOT NULL,\n" \
  "  due_on INTEGER CHECK (due_on >= set_on),\n" \
  "  reached_on INTEGER,\n" \
  "  result TEXT\n" \
  ") STRICT;\n" \
  "CREATE INDEX goal_person ON goal (person_id, set_on);\n" \
  "CREATE TABLE role_held (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  words TEXT NOT NULL CHECK (length (words) BETWEEN 1 AND 200),\n" \
  "  is_service INTEGER NOT NULL CHECK (is_service IN (0, 1)),\n" \
  "  from_on INTEGER NOT NULL,\n" \
  "  to_on INTEGER CHECK (to_on >= from_on)\n" \
  ") STRICT;\n" \
  "CREATE INDEX role_held_person ON role_held (person_id, from_on);\n"

/* Pictures with captions, and who is on them. */
#define SHOTS \
  "CREATE TABLE shot (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  picture_id INTEGER NOT NULL REFERENCES picture (id),\n" \
  "  day INTEGER NOT NULL,\n" \
  "  caption TEXT NOT NULL CHECK (length (caption) BETWEEN 1 AND 1000),\n" \
  /* Whose packet it is meant for; NULL: anybody's. */ \
  "  person_id INTEGER REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  batch_id INTEGER REFERENCES batch (id),\n" \
  "  build_id INTEGER REFERENCES build (id),\n" \
  "  event_id INTEGER REFERENCES event (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX shot_picture ON shot (picture_id);\n" \
  "CREATE INDEX shot_whose ON shot (person_id) WHERE person_id IS NOT NULL;\n" \
  "CREATE INDEX shot_batch ON shot (batch_id) WHERE batch_id IS NOT NULL;\n" \
  "CREATE INDEX shot_build ON shot (build_id) WHERE build_id IS NOT NULL;\n" \
  "CREATE INDEX shot_event ON shot (event_id) WHERE event_id IS NOT NULL;\n" \
  "CREATE TABLE shot_person (\n" \
  "  shot_id INTEGER NOT NULL REFERENCES shot (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  PRIMARY KEY (shot_id, person_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX shot_person_person ON shot_person (person_id);\n"

/* How a result is shared, what a packet holds and in which order, and what left the farm. */
#define PACKETS \
  "CREATE TABLE share_rule (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  /* NULL: of the whole farm. */ \
  "  enterprise_id INTEGER REFERENCES enterprise (id),\n" \
  "  from_on INTEGER NOT NULL,\n" \
  "  basis TEXT NOT NULL CHECK (basis IN ('hours', 'role', 'fixed')),\n" \
  "  agreed_by INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX share_rule_enterprise ON share_rule (enterprise_id) WHERE enterprise_id IS NOT NULL;\n" \
  "CREATE INDEX share_rule_agreed ON share_rule (agreed_by) WHERE agreed_by IS NOT NULL;\n" \
  "CREATE TABLE share_part (\n" \
  "  rule_id INTEGER NOT NULL REFERENCES share_rule (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  /* Of all parts; for hours a factor on the person's hours. */ \
  "  weight REAL NOT NULL CHECK (weight >= 0),\n" \
  "  PRIMARY KEY (rule_id, person_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX share_part_person ON share_part (person_id);\n" \
  "CREATE TABLE packet (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  name TEXT NOT NULL CHECK (length (name) BETWEEN 1 AND 200),\n" \
  "  person_id INTEGER REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  event_id INTEGER REFERENCES event (id) ON DELETE CASCADE,\n" \
  "  from_on INTEGER NOT NULL,\n" \
  "  to_on INTEGER NOT NULL CHECK (to_on >= from_on),\n" \
  "  brief TEXT,\n" \
  "  with_names INTEGER NOT NULL DEFAULT 0 CHECK (with_names IN (0, 1)),\n" \
  "  with_pictures INTEGER NOT NULL DEFAULT 0 CHECK (with_pictures IN (0, 1))\n" \
  ") STRICT;\n" \
  "CREATE INDEX packet_person ON packet (person_id) WHERE person_id IS NOT NULL;\n" \
  "CREATE INDEX packet_event ON packet (event_id) WHERE event_id IS NOT NULL;\n" \
  "CREATE TABLE packet_section (\n" \
  "  packet_id INTEGER NOT NULL REFERENCES packet (id) ON DELETE CASCADE,\n" \
  "  position INTEGER NOT NULL,\n" \
  "  section TEXT NOT NULL CHECK (length (section) BETWEEN 1 AND 40),\n" \
  "  PRIMARY KEY (packet_id, position),\n" \
  "  UNIQUE (packet_id, section)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  /* Kept as long as what it tells of; nobody is named who need not be. */ \
  "CREATE TABLE release (\n" \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n" \
  "  day INTEGER NOT NULL,\n" \
  "  what TEXT NOT NULL CHECK (length (what) BETWEEN 1 AND 400),\n" \
  "  to_whom TEXT NOT NULL CHECK (length (to_whom) BETWEEN 1 AND 200),\n" \
  "  ground TEXT NOT NULL CHECK (length (ground) BETWEEN 1 AND 400),\n" \
  "  by_person INTEGER REFERENCES person (id)\n" \
  ") STRICT;\n" \
  "CREATE INDEX release_by ON release (by_person) WHERE by_person IS NOT NULL;\n" \
  "CREATE TABLE release_person (\n" \
  "  release_id INTEGER NOT NULL REFERENCES release (id) ON DELETE CASCADE,\n" \
  "  person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,\n" \
  "  PRIMARY KEY (release_id, person_id)\n" \
  ") STRICT, WITHOUT ROWID;\n" \
  "CREATE INDEX release_person_person ON release_person (person_id);\n"

/* A reading that was taken down on paper and typed in later keeps both times. */
#define CHECKS \
  "ALTER TABLE reading ADD COLUMN noted_at INTEGER;\n"

const char stead_schema_step_5[] = PEOPLE EVENTS HOURS LEARNING SHOTS PACKETS JOINT OVERHEAD CHECKS BUILD_BUY;
