/* test-packet.c - skills, questions, events and packets against what was entered. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-event-answer.h"
#include "answer/stead-packet-answer.h"
#include "answer/stead-reflect-answer.h"
#include "answer/stead-skill-answer.h"
#include "farm.h"
#include "store/stead-reflection-repo.h"
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
  /* Blank sections are told, not left out. */
  g_assert_true (part (answer, "roles")->is_blank);
  g_assert_nonnull (part (answer, "roles")->lack);
  /* Nobody else is named. */
  all = texts (answer);
  g_assert_nonnull (strstr (all, "Maya"));
  g_assert_null (strstr (all, "Devon"));
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
      g_assert_cmpint (((SteadPacketFigure *) ((SteadPacketPart *) answer->parts->pdata[i])->figures->pdata[k])->mark, ==,
                       next++);
  g_assert_cmpint (answer->n_marks, ==, next - 1);
  g_assert_cmpint (answer->n_marks, >, 4);
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
  g_assert_cmpfloat (after->first_frac, ==, 0.6);
  g_assert_cmpfloat (after->last_frac, ==, 0.81);
  g_assert_nonnull (strstr (after->scores_text, "60"));
  g_assert_nonnull (strstr (after->scores_text, "81"));
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
  ADD ("/answer/packet/marks", test_marks);
  ADD ("/answer/packet/event", test_event);
  return g_test_run ();
}
