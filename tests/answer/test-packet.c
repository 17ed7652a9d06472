/* test-packet.c - skills, questions, events and packets against what was entered. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-batch-answer.h"
#include "answer/stead-event-answer.h"
#include "answer/stead-packet-state.h"
#include "answer/stead-packet-answer.h"
#include "answer/stead-reflect-answer.h"
#include "answer/stead-skill-answer.h"
#include "farm.h"
#include "numbers.h"
#include "store/stead-asset-repo.h"
#include "store/stead-build-bill-repo.h"
#include "store/stead-cash-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-store-internal.h"
#include "store/stead-work-repo.h"

static gint64
person (Farm            *farm,
        const char      *name,
        SteadPersonRole  role)
{
  SteadPerson one = { .name = (char *) name, .role = role, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &one, &farm_error));
  return one.id;
}

static gint64
skill (Farm       *farm,
       const char *words)
{
  SteadSkill one = { .words = (char *) words, .retired_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_skill_repo_save (farm->store, &one, &farm_error));
  return one.id;
}

static void
work (Farm   *farm,
      gint64  who,
      int     days_ago,
      double  minutes,
      gint64  event_id)
{
  SteadWorkSpan span = { .person_id = who, .day = farm->today - days_ago, .from_at = G_MININT64, .minutes = minutes,
                         .duty = (char *) "Feeding", .batch_id = farm->flock, .event_id = event_id };

  FARM_DO (farm, stead_work_repo_add (farm->store, &span, &farm_error));
}

static gint64
packet_of (Farm   *farm,
           gint64  who,
           gint64  event_id)
{
  g_autoptr(SteadPacket) packet = stead_packet_usual (farm->store, farm->today, NULL);

  packet->name = g_strdup ("Mine");
  packet->person_id = who;
  packet->event_id = event_id;
  FARM_DO (farm, stead_packet_repo_save (farm->store, packet, &farm_error));
  return packet->id;
}

static const SteadPacketPart *
part (const SteadPacketAnswer *answer,
      const char              *key)
{
  for (guint i = 0; i < answer->parts->len; i++)
    if (g_str_equal (((SteadPacketPart *) answer->parts->pdata[i])->key, key))
      return answer->parts->pdata[i];
  g_assert_not_reached ();
}

/* All texts of the packet, for a search. */
static char *
texts (const SteadPacketAnswer *answer)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadPacketPart *one = answer->parts->pdata[i];

      for (guint k = 0; k < one->blocks->len; k++)
        {
          const SteadPacketBlock *block = one->blocks->pdata[k];

          g_string_append_printf (all, "%s\n", block->text != NULL ? block->text : "");
          for (guint r = 0; block->table != NULL && r < block->table->rows->len; r++)
            for (int c = 0; c < block->table->n_columns; c++)
              g_string_append_printf (all, "%s\n", ((SteadCardRow *) block->table->rows->pdata[r])->cells[c] != NULL
                                      ? ((SteadCardRow *) block->table->rows->pdata[r])->cells[c] : "");
        }
    }
  return g_string_free (all, FALSE);
}

static void
test_skills (Farm          *farm,
             gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  gint64 eggs = skill (farm, "Collect eggs");
  SteadSkillTry first = { .skill_id = eggs, .person_id = maya, .day = farm->today - 9, .level = STEAD_SKILL_HELPED };
  SteadSkillTry second = { .skill_id = eggs, .person_id = maya, .day = farm->today, .level = STEAD_SKILL_ALONE };
  g_autoptr(SteadSkillAnswer) answer = NULL;
  g_autofree char *text = NULL;
  const SteadSkillRow *row;

  skill (farm, "Read a scale");
  farm_entry (farm, farm->today - 1, 9, 0, 1, 0);
  FARM_DO (farm, stead_skill_repo_save_try (farm->store, &first, &farm_error));
  FARM_DO (farm, stead_skill_repo_save_try (farm->store, &second, &farm_error));
  FARM_DO (farm, stead_skill_repo_add_evidence (farm->store, second.id, STEAD_EVIDENCE_ENTRY, 1, &farm_error));
  answer = stead_skill_answer_new (farm->store, maya, NULL);
  g_assert_cmpint (answer->n_tried, ==, 1);
  g_assert_cmpint (answer->n_alone, ==, 1);
  g_assert_cmpint (answer->n_shown, ==, 1);
  g_assert_cmpint (answer->n_checked, ==, 0);
  g_assert_cmpfloat (answer->covered_frac, ==, 0.5);
  row = answer->rows->pdata[0];
  g_assert_cmpint (row->best, ==, STEAD_SKILL_ALONE);
  g_assert_cmpint (stead_evidence_target (row->evidence->pdata[0]), ==, STEAD_TARGET_BATCH);
  text = stead_evidence_text (row->evidence->pdata[0], answer->farm);
  g_assert_nonnull (strstr (text, "9 "));
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "1 of 2"));
}

/* Ten hens lay eight eggs a day, then six in the last week: lay fell by 25 of 100. */
static void
test_lay_question (Farm          *farm,
                   gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  g_autoptr(SteadReflectAnswer) answer = NULL;
  const SteadReflectQuestion *question;

  for (int days = 27; days >= 0; days--)
    farm_entry (farm, farm->today - days, days > 6 ? 8 : 6, 0, 1, 0);
  answer = stead_reflect_answer_new (farm->store, maya, farm->today - 27, farm->today, NULL);
  g_assert_cmpuint (answer->questions->len, ==, 1);
  question = answer->questions->pdata[0];
  g_assert_nonnull (strstr (question->text, "25"));
  g_assert_cmpint (question->batch_id, ==, farm->flock);
  g_assert_cmpint (question->day, ==, farm->today - 6);
  g_assert_false (question->is_answered);
}

static void
test_packet (Farm          *farm,
             gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  gint64 devon = person (farm, "Devon", STEAD_PERSON_STUDENT);
  g_autoptr(SteadPacketAnswer) answer = NULL;
  g_autofree char *all = NULL;
  const SteadPacketPart *hours;
  const SteadPacketFigure *figure;
  const char *worked;

  farm_log (farm);
  work (farm, maya, 1, 90, 0);
  work (farm, maya, 40, 25, 0);
  work (farm, devon, 1, 600, 0);
  answer = stead_packet_answer_new (farm->store, packet_of (farm, maya, 0), NULL, NULL);
  g_assert_nonnull (answer);
  g_assert_cmpuint (answer->parts->len, ==, g_strv_length ((char **) stead_packet_sections ()));
  hours = part (answer, "hours");
  g_assert_false (hours->is_blank);
  figure = hours->figures->pdata[0];
  /* 90 + 25 minutes are 1:55 h. */
  g_assert_nonnull (strstr (figure->text, "1:55"));
  g_assert_cmpuint (figure->n_entries, ==, 2);
  /* February's 25 minutes and March's 90. */
  worked = farm_find_why (answer->whys, "Hours of this packet")->worked;
  g_assert_nonnull (strstr (worked, "0:25 + "));
  g_assert_true (g_str_has_suffix (worked, "1:30 = 1:55"));
  /* Blank sections are told, not left out. */
  g_assert_true (part (answer, "roles")->is_blank);
  g_assert_nonnull (part (answer, "roles")->lack);
  /* Nobody else is named. */
  all = texts (answer);
  g_assert_nonnull (strstr (all, "Maya"));
  g_assert_null (strstr (all, "Devon"));
}

/* A file of another program may name a section that this one does not know. */
static void
set_rate (Farm   *farm,
          gint64  cents)
{
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (farm->store, NULL);

  facts->labor_cents_hour = cents;
  FARM_DO (farm, stead_farm_repo_set (farm->store, facts, &farm_error));
}

/* Two of a team: 1:55 and 10:00 h; at $12.00 an hour they would be worth $143.00. */
static void
test_whys (Farm          *farm,
           gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  gint64 devon = person (farm, "Devon", STEAD_PERSON_STUDENT);
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "poultry", .day = farm->today + 9 };
  g_autoptr(SteadPacketAnswer) answer = NULL;
  const char *worked;

  farm_stock (farm);
  farm_log (farm);
  set_rate (farm, 1200);
  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, maya, NULL, &farm_error));
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, devon, NULL, &farm_error));
  work (farm, maya, 1, 115, 0);
  work (farm, devon, 1, 600, 0);
  answer = stead_packet_answer_new (farm->store, packet_of (farm, 0, event.id), NULL, NULL);
  worked = farm_find_why (answer->whys, "Hours of this packet")->worked;
  g_assert_nonnull (strstr (worked, "1:55"));
  g_assert_nonnull (strstr (worked, "10:00"));
  g_assert_true (g_str_has_suffix (worked, " = 11:55"));
  NUMBERS_ARE (farm_find_why (answer->whys, "What the unpaid hours would be worth")->worked, 11.92, 12, 143);
  farm_find_why (answer->whys, "Earned");
  farm_find_why (answer->whys, "Change of what the farm is worth");
}

static void
test_section_from_elsewhere (Farm          *farm,
                             gconstpointer  data)
{
  g_autoptr(SteadPacket) packet = stead_packet_usual (farm->store, farm->today, NULL);
  g_autoptr(SteadPacketAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;

  packet->name = g_strdup ("Mine");
  packet->person_id = person (farm, "Maya", STEAD_PERSON_STUDENT);
  g_ptr_array_set_size (packet->sections, 3);
  FARM_DO (farm, stead_packet_repo_save (farm->store, packet, &farm_error));
  g_assert_cmpint (sqlite3_exec (farm->store->db, "UPDATE packet_section SET section = 'weather'"
                                 " WHERE position = (SELECT max (position) - 1 FROM packet_section)", NULL, NULL, NULL),
                   ==, SQLITE_OK);
  answer = stead_packet_answer_new (farm->store, packet->id, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (answer->parts->len, ==, 2);
  g_assert_cmpstr (((const SteadPacketPart *) answer->parts->pdata[1])->key, ==, packet->sections->pdata[2]);
}

/* Hours at a task of a build bring the build into the packet, and tell what was done. */
static void
test_build (Farm          *farm,
            gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  g_autoptr(SteadBuild) build = stead_build_new (STEAD_BUILD_LIST);
  SteadBuildPhase phase = { .name = (char *) "Paint the gate", .hours = 4, .position = -1, .from_day = STEAD_DAY_NONE,
                            .to_day = STEAD_DAY_NONE, .done_on = STEAD_DAY_NONE };
  SteadWorkSpan span = { .person_id = maya, .day = farm->today - 1, .from_at = G_MININT64, .minutes = 150,
                         .duty = (char *) "Painting" };
  g_autoptr(SteadPacketAnswer) answer = NULL;
  g_autoptr(GPtrArray) offers = NULL;
  g_autofree char *all = NULL;
  gboolean offered = FALSE;

  build->name = g_strdup ("New gate");
  FARM_DO (farm, stead_build_repo_save (farm->store, build, &farm_error));
  phase.build_id = build->id;
  FARM_DO (farm, stead_build_phase_repo_save (farm->store, &phase, &farm_error));
  span.phase_id = phase.id;
  FARM_DO (farm, stead_work_repo_add (farm->store, &span, &farm_error));
  answer = stead_packet_answer_new (farm->store, packet_of (farm, maya, 0), NULL, NULL);
  g_assert_false (part (answer, "build")->is_blank);
  all = texts (answer);
  g_assert_nonnull (strstr (all, "New gate"));
  /* 150 minutes of the 4 hours that were planned, with the mark of the row. */
  g_assert_nonnull (strstr (all, "\n4\n2.5\n"));
  g_assert_nonnull (strstr (all, "Paint the gate\u00a0"));
  offers = stead_skill_repo_offer (farm->store, maya, farm->today - 9, farm->today, NULL);
  for (guint i = 0; i < offers->len; i++)
    offered |= stead_evidence_target (offers->pdata[i]) == STEAD_TARGET_BUILD;
  g_assert_true (offered);
}

/* What a student's packet is filled with is counted without one, too. */
static void
test_state (Farm          *farm,
            gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  SteadPacketState bare, worked, chosen;
  g_autoptr(SteadPacket) packet = stead_packet_usual (farm->store, farm->today, NULL);

  g_assert_true (stead_packet_state_of (farm->store, maya, NULL, &bare, NULL));
  g_assert_cmpint (bare.n_all, ==, (int) packet->sections->len);
  work (farm, maya, 1, 90, 0);
  g_assert_true (stead_packet_state_of (farm->store, maya, NULL, &worked, NULL));
  /* Hours by activity, and the flock that they belong to. */
  g_assert_cmpint (worked.n_there, ==, bare.n_there + 2);
  /* A packet of one's own counts as it was chosen. */
  g_ptr_array_set_size (packet->sections, 2);
  packet->name = g_strdup ("Short");
  packet->person_id = maya;
  FARM_DO (farm, stead_packet_repo_save (farm->store, packet, &farm_error));
  g_assert_true (stead_packet_state_of (farm->store, maya, NULL, &chosen, NULL));
  g_assert_cmpint (chosen.n_all, ==, 2);
}

/* Columns stand for the months of the packet, and sum up to what is said. */
static void
test_chart (Farm          *farm,
            gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  g_autoptr(SteadPacketAnswer) answer = NULL;
  const SteadPacketPart *production;
  const SteadPacketMonths *months = NULL;
  double sum = 0;

  farm_log (farm);
  work (farm, maya, 1, 90, 0);
  answer = stead_packet_answer_new (farm->store, packet_of (farm, maya, 0), NULL, NULL);
  production = part (answer, "production");
  for (guint i = 0; i < production->blocks->len && months == NULL; i++)
    months = ((const SteadPacketBlock *) production->blocks->pdata[i])->months;
  g_assert_nonnull (months);
  g_assert_cmpint (months->kind, ==, STEAD_BATCH_FLOCK);
  g_assert_cmpuint (months->names->len, ==, months->values->len);
  for (guint i = 0; i < months->values->len; i++)
    sum += g_array_index (months->values, double, i);
  /* Eight a day for ninety days. */
  g_assert_cmpfloat (sum, ==, 720);
}

/* What a mark leads to is there: a place with its id, or a card; or it says that it is a sum. */
static void
assert_leads (Farm                    *farm,
              const SteadPacketEntry  *entry)
{
  g_autoptr(SteadCashLine) line = NULL;
  g_autoptr(SteadLot) lot = NULL;
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(SteadAsset) asset = NULL;
  g_autoptr(SteadProduct) product = NULL;

  g_test_message ("“%s” leads to %d, %d", entry->text, entry->target, (int) entry->id);
  if (entry->target == STEAD_TARGET_NONE && entry->line_id != 0)
    g_assert_nonnull (line = stead_cash_repo_get (farm->store, entry->line_id, NULL));
  else if (entry->target == STEAD_TARGET_NONE)
    g_assert_true (entry->account_id != 0 || g_str_has_prefix (entry->text, "All before these days"));
  else if (entry->target == STEAD_TARGET_LOT)
    g_assert_nonnull (lot = stead_lot_repo_get (farm->store, entry->id, NULL));
  else if (entry->target == STEAD_TARGET_ASSET)
    g_assert_nonnull (asset = stead_asset_repo_get (farm->store, entry->id, NULL));
  else if (entry->target == STEAD_TARGET_PRODUCT)
    g_assert_nonnull (product = stead_product_repo_get (farm->store, entry->id, NULL));
  else if (entry->target == STEAD_TARGET_BATCH || entry->target == STEAD_TARGET_KITCHEN)
    g_assert_nonnull (batch = stead_batch_repo_get (farm->store, entry->id, NULL));
  else
    g_assert_cmpint (entry->id, >, 0);
}

/* Each mark comes once, counted from 1. */
static void
test_marks (Farm          *farm,
            gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  g_autoptr(SteadPacketAnswer) answer = NULL;
  int next = 1;

  farm_log (farm);
  farm_stock (farm);
  work (farm, maya, 1, 90, 0);
  answer = stead_packet_answer_new (farm->store, packet_of (farm, maya, 0), NULL, NULL);
  for (guint i = 0; i < answer->parts->len; i++)
    for (guint k = 0; k < ((SteadPacketPart *) answer->parts->pdata[i])->figures->len; k++)
      {
        const SteadPacketFigure *figure = ((SteadPacketPart *) answer->parts->pdata[i])->figures->pdata[k];

        g_assert_cmpint (figure->mark, ==, next++);
        g_assert_cmpuint (figure->entries->len, >, 0);
        for (guint m = 0; m < figure->entries->len; m++)
          assert_leads (farm, figure->entries->pdata[m]);
      }
  g_assert_cmpint (answer->n_marks, ==, next - 1);
  g_assert_cmpint (answer->n_marks, >, 4);
}

/* The mark behind a name or a figure of the packet; 0: none. */
static int
mark_of (const char *cell)
{
  static const char * const raised[] = { "⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹" };
  const char *at = cell != NULL ? strstr (cell, "\u00a0") : NULL;
  int mark = 0;

  for (at = at != NULL ? at + strlen ("\u00a0") : ""; *at != '\0';)
    for (int digit = 0; digit < 10; digit++)
      if (g_str_has_prefix (at, raised[digit]))
        {
          mark = mark * 10 + digit;
          at += strlen (raised[digit]);
          break;
        }
  return mark;
}

static const SteadPacketFigure *
figure_of (const SteadPacketPart *one,
           int                    mark)
{
  for (guint i = 0; i < one->figures->len; i++)
    if (((SteadPacketFigure *) one->figures->pdata[i])->mark == mark)
      return one->figures->pdata[i];
  return NULL;
}

/* Each row of a batch's table has a mark of its own, and leads to what that row is made of. */
static void
test_rows (Farm          *farm,
           gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  g_autoptr(SteadPacketAnswer) answer = NULL;
  const SteadPacketPart *production;
  const SteadPacketFigure *of[STEAD_N_BATCH_LINES] = { NULL };
  const SteadCardTable *table = NULL;
  g_autoptr(SteadBatchAnswer) batch = NULL;

  farm_stock (farm);
  farm_log (farm);
  farm_entry (farm, farm->today, 8, 0, 1, 1);
  batch = stead_batch_answer_new (farm->store, farm->flock, NULL);
  work (farm, maya, 1, 90, 0);
  answer = stead_packet_answer_new (farm->store, packet_of (farm, maya, 0), NULL, NULL);
  production = part (answer, "production");
  for (guint i = 0; i < production->blocks->len && table == NULL; i++)
    table = ((const SteadPacketBlock *) production->blocks->pdata[i])->table;
  g_assert_nonnull (table);
  g_assert_cmpuint (table->rows->len, ==, batch->rows->len);
  for (guint i = 0; i < batch->rows->len; i++)
    {
      const SteadBatchRow *row = batch->rows->pdata[i];
      const char *name = ((const SteadCardRow *) table->rows->pdata[i])->cells[0];

      g_assert_true (g_str_has_prefix (name, row->what));
      of[row->line] = figure_of (production, mark_of (name));
      g_assert_nonnull (of[row->line]);
      g_assert_cmpuint (of[row->line]->n_entries, >, 0);
    }
  /* Eggs of each of the ninety days and of the one more entry; of many, sixty are listed and all are counted. */
  g_assert_cmpuint (of[STEAD_BATCH_LINE_OUTPUT]->n_entries, ==, 91);
  g_assert_cmpuint (of[STEAD_BATCH_LINE_OUTPUT]->entries->len, ==, STEAD_PACKET_MOST_ENTRIES);
  g_assert_cmpuint (of[STEAD_BATCH_LINE_FEED]->n_entries, ==, 91);
  g_assert_cmpuint (of[STEAD_BATCH_LINE_LOST]->n_entries, ==, 1);
  /* What the feed cost leads to the lots that it was taken out of, and says of what. */
  for (guint i = 0; i < of[STEAD_BATCH_LINE_FEED_COST]->entries->len; i++)
    {
      const SteadPacketEntry *entry = of[STEAD_BATCH_LINE_FEED_COST]->entries->pdata[i];
      g_autoptr(SteadLot) lot = NULL;

      g_assert_cmpint (entry->target, ==, STEAD_TARGET_LOT);
      lot = stead_lot_repo_get (farm->store, entry->id, NULL);
      g_assert_cmpint (lot->item_id, ==, farm->feed);
      g_assert_nonnull (strstr (entry->text, lot->item_name));
      g_assert_nonnull (strstr (entry->text, lot->code));
    }
}

static void
test_event (Farm          *farm,
            gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT);
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "poultry", .day = farm->today + 9 };
  SteadEventScore score = { .day = farm->today - 9, .score = 60, .out_of = 100 };
  g_autoptr(SteadEventAnswer) before = NULL;
  g_autoptr(SteadEventAnswer) after = NULL;

  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  FARM_DO (farm, stead_event_fill_needs (farm->store, event.id, "poultry", &farm_error));
  before = stead_event_answer_new (farm->store, event.id, NULL);
  g_assert_cmpint (before->packet_id, ==, 0);
  /* Nothing is there: each line of the list is lacking. */
  g_assert_cmpint (before->n_lacking, ==, (int) before->items->len);
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, maya, NULL, &farm_error));
  work (farm, maya, 2, 75, event.id);
  score.event_id = event.id;
  FARM_DO (farm, stead_event_repo_save_score (farm->store, &score, &farm_error));
  score.id = 0;
  score.day = farm->today;
  score.score = 81;
  FARM_DO (farm, stead_event_repo_save_score (farm->store, &score, &farm_error));
  packet_of (farm, 0, event.id);
  after = stead_event_answer_new (farm->store, event.id, NULL);
  g_assert_cmpint (after->n_lacking, <, before->n_lacking);
  g_assert_cmpfloat (after->prepared_minutes, ==, 75);
  g_assert_cmpuint (after->lines->lines->len, ==, 1);
  g_assert_nonnull (strstr (after->lines->text, "60"));
  g_assert_nonnull (strstr (after->lines->text, "81"));
}

static void
add_score (Farm       *farm,
           gint64      event_id,
           gint64      person_id,
           const char *part,
           int         days_ago,
           double      points)
{
  SteadEventScore score = { .event_id = event_id, .person_id = person_id, .part = (char *) part,
                            .day = farm->today - days_ago, .score = points, .out_of = 50 };

  FARM_DO (farm, stead_event_repo_save_score (farm->store, &score, &farm_error));
}

/* Only like is set beside like: each part and person is a line. */
static void
test_scores (Farm          *farm,
             gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT), devon = person (farm, "Devon", STEAD_PERSON_STUDENT);
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "poultry", .day = farm->today + 9 };
  g_autoptr(GPtrArray) scores = NULL;
  g_autoptr(SteadEventScores) self = NULL;
  g_autofree char *hint = NULL, *choice = NULL;
  const SteadScoreLine *first;

  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  add_score (farm, event.id, maya, "Placing", 20, 25);
  add_score (farm, event.id, devon, "Placing", 20, 10);
  add_score (farm, event.id, maya, "Placing", 5, 40);
  add_score (farm, event.id, 0, "Written test", 5, 45);
  scores = stead_event_repo_scores (farm->store, event.id, NULL);
  self = stead_event_scores_new (scores, event.day);
  g_assert_cmpuint (self->lines->len, ==, 3);
  g_assert_cmpint (self->series.n, ==, 3);
  g_assert_cmpint (self->series.event, ==, event.day);
  first = &g_array_index (self->lines, SteadScoreLine, 0);
  g_assert_cmpstr (first->name, ==, "Placing, Maya");
  g_assert_cmpuint (first->n, ==, 2);
  g_assert_cmpfloat (first->points[0].frac, ==, 0.5);
  g_assert_cmpfloat (first->points[1].frac, ==, 0.8);
  /* The names are the farm's own; the words around them are in the person's language. */
  g_assert_nonnull (strstr (self->text, ": Placing, Maya: "));
  g_assert_nonnull (strstr (self->text, " · Placing, Devon: 20% · Written test: 90%"));
  hint = stead_event_scores_hint (self, 0, 1);
  g_assert_true (g_str_has_prefix (hint, "Placing, Maya, "));
  g_assert_true (g_str_has_suffix (hint, ": 80%"));
  choice = stead_event_score_text (scores->pdata[0]);
  g_assert_nonnull (strstr (choice, "Placing, Maya, 25 "));
}

/* The packet of one of a team shows the scores of the team and its own, and names nobody else. */
static void
test_scores_of_others (Farm          *farm,
                       gconstpointer  data)
{
  gint64 maya = person (farm, "Maya", STEAD_PERSON_STUDENT), devon = person (farm, "Devon", STEAD_PERSON_STUDENT);
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "poultry", .day = farm->today + 9 };
  g_autoptr(SteadPacketAnswer) hers = NULL, team = NULL;
  g_autofree char *of_hers = NULL, *of_team = NULL;

  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, maya, NULL, &farm_error));
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, devon, NULL, &farm_error));
  add_score (farm, event.id, maya, "Placing", 20, 25);
  add_score (farm, event.id, devon, "Placing", 20, 10);
  add_score (farm, event.id, 0, "Written test", 5, 45);
  hers = stead_packet_answer_new (farm->store, packet_of (farm, maya, event.id), NULL, NULL);
  of_hers = texts (hers);
  g_assert_nonnull (strstr (of_hers, "Placing, Maya"));
  g_assert_nonnull (strstr (of_hers, "Written test"));
  g_assert_null (strstr (of_hers, "Devon"));
  team = stead_packet_answer_new (farm->store, packet_of (farm, 0, event.id), NULL, NULL);
  of_team = texts (team);
  g_assert_nonnull (strstr (of_team, "Placing, Devon"));
}

/* Until the evening of the event what is lacking is told; from the next day on, how it went is asked. */
static void
test_event_today (Farm          *farm,
                  gconstpointer  data)
{
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "sales", .day = farm->today };
  g_autoptr(SteadEventAnswer) on_the_day = NULL, after = NULL;

  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  FARM_DO (farm, stead_event_fill_needs (farm->store, event.id, "sales", &farm_error));
  on_the_day = stead_event_answer_new (farm->store, event.id, NULL);
  event.day = farm->today - 1;
  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  after = stead_event_answer_new (farm->store, event.id, NULL);
  g_assert_cmpint (after->n_lacking, ==, on_the_day->n_lacking + 2);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (on_the_day->sentence, "are lacking</b> for Contest today"));
      g_assert_nonnull (strstr (after->sentence, "Enter how it went"));
    }
}

/* Of more lines than can be told apart, those that were begun last are drawn; all are said. */
static void
test_many_scores (Farm          *farm,
                  gconstpointer  data)
{
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "sales", .day = farm->today + 9 };
  g_autoptr(GPtrArray) scores = NULL;
  g_autoptr(SteadEventScores) self = NULL;

  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  for (int i = 0; i < STEAD_SCORE_MOST_LINES + 2; i++)
    {
      g_autofree char *part = g_strdup_printf ("Part %d", i);

      add_score (farm, event.id, 0, part, 30 - i, 5 * i);
    }
  scores = stead_event_repo_scores (farm->store, event.id, NULL);
  self = stead_event_scores_new (scores, event.day);
  g_assert_cmpuint (self->lines->len, ==, STEAD_SCORE_MOST_LINES);
  g_assert_cmpstr (g_array_index (self->lines, SteadScoreLine, 0).name, ==, "Part 2");
  g_assert_nonnull (strstr (self->text, "Part 0: 0%"));
}

#define ADD(path, test) g_test_add (path, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("/answer/packet/skills", test_skills);
  ADD ("/answer/packet/lay-question", test_lay_question);
  ADD ("/answer/packet/packet", test_packet);
  ADD ("/answer/packet/whys", test_whys);
  ADD ("/answer/packet/section-from-elsewhere", test_section_from_elsewhere);
  ADD ("/answer/packet/build", test_build);
  ADD ("/answer/packet/marks", test_marks);
  ADD ("/answer/packet/rows", test_rows);
  ADD ("/answer/packet/event", test_event);
  ADD ("/answer/packet/event-today", test_event_today);
  ADD ("/answer/packet/state", test_state);
  ADD ("/answer/packet/chart", test_chart);
  ADD ("/answer/packet/scores", test_scores);
  ADD ("/answer/packet/many-scores", test_many_scores);
  ADD ("/answer/packet/scores-of-others", test_scores_of_others);
  return g_test_run ();
}
