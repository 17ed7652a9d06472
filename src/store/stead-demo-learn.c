/* stead-demo-learn.c - what the students of the demo farm learned and show. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-event-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-packet-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-sale-repo.h"
#include "store/stead-skill-repo.h"
#include "store/stead-work-repo.h"

/* How far back the log is looked through for what shows a skill. */
#define EVIDENCE_DAYS 200

/* The parts of "AS.06:4:90"; what is not there is empty. */
static char **
parts_of (const char *text,
          guint       n)
{
  g_auto(GStrv) split = g_strsplit (text, ":", (int) n);
  char **parts = g_new0 (char *, n + 1);

  for (guint i = 0; i < n; i++)
    parts[i] = g_strdup (i < g_strv_length (split) ? g_strstrip (split[i]) : "");
  return parts;
}

static SteadDay
days_ago (SteadDemoWriter *writer,
          const char      *text)
{
  return stead_store_get_today (writer->store) - (SteadDay) g_ascii_strtoll (text, NULL, 10);
}

gint64
stead_demo_person_of (SteadDemoWriter *writer,
                      const char      *name)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (writer->store, NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    if (g_strcmp0 (((const SteadPerson *) people->pdata[i])->name, name) == 0)
      return ((const SteadPerson *) people->pdata[i])->id;
  stead_demo_fault (&writer->story->reader, "learner", name);
  return 0;
}

/* --- skills -------------------------------------------------------------------------- */

static gboolean
write_skills (SteadDemoWriter  *writer,
              gconstpointer     what,
              GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, "skills", "list");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 3);
      g_autofree char *group = g_strconcat ("skill ", parts[0], NULL);
      SteadSkill skill = { .code = parts[0], .words = parts[1], .area = parts[2], .retired_on = STEAD_DAY_NONE };

      if (!stead_skill_repo_save (writer->store, &skill, error))
        return FALSE;
      stead_demo_set_id (writer, group, skill.id);
    }
  return TRUE;
}

/* Rows of the log of the kind that fits the skill, the latest first. */
static gboolean
add_evidence (SteadDemoWriter  *writer,
              gint64            try_id,
              gint64            person_id,
              const char       *code,
              guint             n,
              GError          **error)
{
  static const struct { const char *code; SteadEvidenceKind what; } fits[] = {
    { "AS.06", STEAD_EVIDENCE_ENTRY }, { "AS.02", STEAD_EVIDENCE_ENTRY }, { "AS.03", STEAD_EVIDENCE_WEIGHING },
    { "FPP.01", STEAD_EVIDENCE_READING }, { "FPP.02", STEAD_EVIDENCE_READING }, { "ABS.02", STEAD_EVIDENCE_PRODUCT },
    { "ABS.03", STEAD_EVIDENCE_RECEIPT }, { "ABS.05", STEAD_EVIDENCE_SHOT }, { "PST.04", STEAD_EVIDENCE_SHOT },
  };
  SteadDay today = stead_store_get_today (writer->store);
  g_autoptr(GPtrArray) offers = stead_skill_repo_offer (writer->store, person_id, today - EVIDENCE_DAYS, today, error);

  for (gsize i = 0; offers != NULL && i < G_N_ELEMENTS (fits); i++)
    for (guint k = 0; k < offers->len && g_str_equal (fits[i].code, code) && n > 0; k++)
      {
        const SteadEvidence *offer = offers->pdata[k];

        if (offer->what != fits[i].what)
          continue;
        if (!stead_skill_repo_add_evidence (writer->store, try_id, offer->what, offer->row_id, error))
          return FALSE;
        n--;
      }
  return offers != NULL;
}

static gboolean
add_tries (SteadDemoWriter  *writer,
           const char       *group,
           gint64            person_id,
           GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "tries");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 5);
      SteadSkillTry try_ = { .person_id = person_id, .day = days_ago (writer, parts[2]),
                             .level = (SteadSkillLevel) g_ascii_strtoll (parts[1], NULL, 10) };

      try_.skill_id = stead_demo_id_of (writer, "skill", parts[0]);
      if (!stead_skill_repo_save_try (writer->store, &try_, error)
          || !add_evidence (writer, try_.id, person_id, parts[0], (guint) g_ascii_strtoull (parts[3], NULL, 10), error)
          || (*parts[4] == '1' && !stead_skill_repo_check (writer->store, try_.id, writer->advisor_id, error)))
        return FALSE;
    }
  return TRUE;
}

/* --- goals, roles, thoughts --------------------------------------------------------------- */

static gboolean
add_goals (SteadDemoWriter  *writer,
           const char       *group,
           gint64            person_id,
           GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "goals");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 4);
      SteadGoal goal = { .person_id = person_id, .words = parts[2], .set_on = days_ago (writer, parts[0]),
                         .reached_on = STEAD_DAY_NONE, .result = parts[3] };

      goal.due_on = goal.set_on + (SteadDay) g_ascii_strtoll (parts[1], NULL, 10);
      if (*parts[3] != '\0')
        goal.reached_on = MIN (goal.due_on, stead_store_get_today (writer->store));
      if (!stead_goal_repo_save (writer->store, &goal, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
add_roles (SteadDemoWriter  *writer,
           const char       *group,
           gint64            person_id,
           GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "roles");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 4);
      SteadDay days = (SteadDay) g_ascii_strtoll (parts[2], NULL, 10);
      SteadRoleHeld role = { .person_id = person_id, .words = parts[3], .is_service = *parts[0] == '1',
                             .from_on = days_ago (writer, parts[1]), .to_on = STEAD_DAY_NONE };

      if (days > 0)
        role.to_on = role.from_on + days - 1;
      if (!stead_role_held_repo_save (writer->store, &role, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
add_thoughts (SteadDemoWriter  *writer,
              const char       *group,
              gint64            person_id,
              GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "thoughts");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 4);
      SteadReflection thought = { .person_id = person_id, .day = days_ago (writer, parts[0]),
                                  .is_shown = *parts[1] == '1', .question = parts[2], .text = parts[3] };

      if (!stead_reflection_repo_save (writer->store, &thought, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_learner (SteadDemoWriter  *writer,
               gconstpointer     group,
               GError          **error)
{
  gint64 person_id = stead_demo_person_of (writer, stead_demo_group_name (group));

  return stead_demo_sound (writer, error) && add_tries (writer, group, person_id, error) &&
         add_goals (writer, group, person_id, error) && add_roles (writer, group, person_id, error) &&
         add_thoughts (writer, group, person_id, error);
}

/* --- events ---------------------------------------------------------------------------------- */

static gboolean
add_team (SteadDemoWriter  *writer,
          const char       *group,
          gint64            event_id,
          GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "team");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 2);

      if (!stead_event_repo_join (writer->store, event_id, stead_demo_person_of (writer, parts[0]), parts[1], error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
add_scores (SteadDemoWriter  *writer,
            const char       *group,
            const SteadEvent *event,
            GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "scores");

  for (char **text = list; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 5);
      SteadEventScore score = { .event_id = event->id, .day = days_ago (writer, parts[0]), .part = parts[2],
                                .score = g_ascii_strtod (parts[3], NULL), .out_of = g_ascii_strtod (parts[4], NULL) };

      score.person_id = *parts[1] != '\0' ? stead_demo_person_of (writer, parts[1]) : 0;
      score.is_final = score.day == event->day;
      if (!stead_event_repo_save_score (writer->store, &score, error))
        return FALSE;
    }
  return TRUE;
}

/* Written down on the evening of the day itself. */
static gboolean
add_hours (SteadDemoWriter  *writer,
           const char       *group,
           gint64            event_id,
           GError          **error)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, group, "hours");
  SteadDay today = stead_store_get_today (writer->store);
  gboolean good = TRUE;

  for (char **text = list; *text != NULL && good; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 5);
      int minutes = (int) g_ascii_strtoll (parts[2], NULL, 10);
      SteadWorkSpan span = { .person_id = stead_demo_person_of (writer, parts[1]), .day = today - (SteadDay) g_ascii_strtoll (parts[0], NULL, 10),
                             .minutes = minutes, .duty = parts[4], .event_id = event_id };

      span.from_at = stead_sale_time (span.day, (int) g_ascii_strtoll (parts[3], NULL, 10));
      span.to_at = span.from_at + 60 * minutes;
      stead_store_set_today (writer->store, span.day);
      good = stead_work_repo_add (writer->store, &span, error);
    }
  stead_store_set_today (writer->store, today);
  return good;
}

static gboolean
add_need (SteadDemoWriter  *writer,
          gint64            event_id,
          SteadNeedKind     what,
          const char       *words,
          const char       *text,
          GError          **error)
{
  SteadEventNeed need = { .event_id = event_id, .what = what, .words = (char *) words, .text = (char *) text,
                          .done_on = what == STEAD_NEED_MATERIAL ? stead_store_get_today (writer->store) : STEAD_DAY_NONE };

  return stead_event_repo_save_need (writer->store, &need, error);
}

static gboolean
add_needs (SteadDemoWriter  *writer,
           const char       *group,
           gint64            event_id,
           GError          **error)
{
  static const char * const common[] = { "brief", "hours", "production", "skills", "journal" };
  g_auto(GStrv) own = stead_demo_list (&writer->story->reader, group, "own");
  g_auto(GStrv) ready = stead_demo_list (&writer->story->reader, group, "ready");

  for (gsize i = 0; i < G_N_ELEMENTS (common); i++)
    if (!add_need (writer, event_id, STEAD_NEED_SECTION, common[i], NULL, error))
      return FALSE;
  for (char **text = own; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (*text, 2);

      if (!add_need (writer, event_id, STEAD_NEED_OWN, parts[0], parts[1], error))
        return FALSE;
    }
  for (char **text = ready; *text != NULL; text++)
    if (**text != '\0' && !add_need (writer, event_id, STEAD_NEED_MATERIAL, *text, NULL, error))
      return FALSE;
  return TRUE;
}

static gboolean
write_event (SteadDemoWriter  *writer,
             gconstpointer     group,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *kind = stead_demo_text (reader, group, "kind");
  g_autofree char *place = stead_demo_text_if (reader, group, "place");
  g_autofree char *result = stead_demo_text_if (reader, group, "result");
  g_autofree char *learned = stead_demo_text_if (reader, group, "learned");
  SteadEvent event = { .name = (char *) stead_demo_group_name (group), .kind = kind, .place = place,
                       .result = result, .learned = learned };

  event.day = stead_store_get_today (writer->store) + (SteadDay) stead_demo_number (reader, group, "days");
  if (!stead_demo_sound (writer, error) || !stead_event_repo_save (writer->store, &event, error))
    return FALSE;
  stead_demo_set_id (writer, group, event.id);
  return add_team (writer, group, event.id, error) && add_scores (writer, group, &event, error) &&
         add_hours (writer, group, event.id, error) && add_needs (writer, group, event.id, error);
}

/* --- packets ----------------------------------------------------------------------------------- */

static gboolean
write_packet (SteadDemoWriter  *writer,
              gconstpointer     group,
              GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *person = stead_demo_text_if (reader, group, "person");
  g_autofree char *event = stead_demo_text_if (reader, group, "event");
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (writer->store, error);
  g_autoptr(SteadPacket) packet = stead_packet_new ();

  if (farm == NULL)
    return FALSE;
  packet->name = g_strdup (stead_demo_group_name (group));
  packet->brief = stead_demo_text_if (reader, group, "brief");
  packet->with_pictures = stead_demo_number_if (reader, group, "pictures", 0) > 0;
  packet->to_on = stead_store_get_today (writer->store);
  packet->from_on = stead_school_year_start (packet->to_on, farm->school_year_month, farm->school_year_mday);
  packet->person_id = person != NULL ? stead_demo_person_of (writer, person) : 0;
  packet->event_id = event != NULL ? stead_demo_id_of (writer, "contest", event) : 0;
  for (const char * const *key = stead_packet_sections (); *key != NULL; key++)
    g_ptr_array_add (packet->sections, g_strdup (*key));
  return stead_demo_sound (writer, error) && stead_packet_repo_save (writer->store, packet, error);
}

gboolean
stead_demo_write_learning (SteadDemoWriter  *writer,
                           GError          **error)
{
  return stead_demo_act (writer, _("The list of skills"), write_skills, NULL, error) &&
         stead_demo_write_shots (writer, error) &&
         stead_demo_write_groups (writer, "learner", write_learner, error) &&
         stead_demo_write_groups (writer, "contest", write_event, error) &&
         stead_demo_write_groups (writer, "packet", write_packet, error);
}
