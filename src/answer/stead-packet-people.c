/* stead-packet-people.c - sections of a packet about the person: who it is, what was aimed
 * at, learned, held and thought.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-private.h"
#include "answer/stead-skill-answer.h"
#include "store/stead-reflection-repo.h"

/* Of a team, each person's part has the name over it. */
static void
add_name (SteadPacketMaking *making,
          guint              n)
{
  if (stead_packet_is_team (making))
    stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, g_strdup (stead_packet_person_name (making, n)));
}

/* --- cover and brief ---------------------------------------------------------------- */

/* Whoever signs is named on the cover. */
static gboolean
add_advisors (SteadPacketMaking  *making,
              SteadCardTable     *table,
              GError            **error)
{
  g_autoptr(GPtrArray) people = stead_packet_people (making->store, error);
  g_autoptr(GString) names = g_string_new (NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->role == STEAD_PERSON_ADVISOR)
        g_string_append_printf (names, "%s%s", names->len > 0 ? C_("between items of a list", ", ") : "", person->name);
    }
  if (names->len > 0)
    stead_packet_add_row (table, g_strdup (C_("who signs", "Advisor")), g_strdup (names->str));
  return people != NULL;
}

gboolean
stead_packet_make_cover (SteadPacketMaking  *making,
                         GError            **error)
{
  const SteadPacketAnswer *answer = making->answer;
  SteadCardTable *table = stead_packet_add_table (making, 2, "", "", NULL);

  stead_packet_add_row (table, g_strdup (stead_packet_is_team (making) ? C_("cover of a packet", "Team")
                                                                       : C_("cover of a packet", "Student")),
                        g_strdup (answer->whose));
  stead_packet_add_row (table, g_strdup (C_("cover of a packet", "Farm")), g_strdup (answer->farm->name));
  stead_packet_add_row (table, g_strdup (C_("cover of a packet", "Days")),
                        stead_packet_days (answer->packet->from_on, answer->packet->to_on));
  if (answer->event != NULL)
    stead_packet_add_row (table, g_strdup (C_("cover of a packet", "Event")), g_strdup (answer->event->name));
  if (!add_advisors (making, table, error))
    return FALSE;
  table = stead_packet_add_table (making, 2, C_("contents of a packet", "No."), C_("contents of a packet", "Section"),
                                  NULL);
  for (guint i = 0; i < answer->packet->sections->len; i++)
    stead_packet_add_row (table, g_strdup_printf ("%u", i + 1),
                          g_strdup (stead_packet_section_title (answer->packet->sections->pdata[i])));
  ((SteadPacketBlock *) making->part->blocks->pdata[making->part->blocks->len - 1])->kind = STEAD_BLOCK_CONTENTS;
  return TRUE;
}

gboolean
stead_packet_make_brief (SteadPacketMaking  *making,
                         GError            **error)
{
  const SteadPacketAnswer *answer = making->answer;
  const SteadStatementAnswer *statement = stead_packet_statement (making, error);
  g_autofree char *sum = NULL, *skills = NULL;
  SteadPacketFigure *figure, *tried;
  SteadCardTable *table;
  double minutes = 0;
  int n_tried = 0;

  if (statement == NULL)
    return FALSE;
  if (answer->packet->brief != NULL)
    stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_markup_escape_text (answer->packet->brief, -1));
  else
    stead_packet_blank (making, g_strdup (_("Write the work in brief: what was aimed at, and what was done.")),
                        STEAD_TARGET_NONE, 0);
  table = stead_packet_add_table (making, 1, C_("column of a packet", "Figure"), C_("column of a packet", "Value"), NULL);
  figure = stead_packet_add_figure (making, NULL);
  tried = stead_packet_add_figure (making, NULL);
  for (guint i = 0; i < answer->people->len; i++)
    {
      gint64 person = stead_packet_person_id (making, i);
      g_autoptr(GPtrArray) hours = stead_packet_repo_hours (making->store, person, answer->packet->from_on,
                                                            answer->packet->to_on, error);
      g_autoptr(SteadSkillAnswer) known = hours != NULL ? stead_skill_answer_new (making->store, person, error) : NULL;

      if (known == NULL)
        return FALSE;
      n_tried += known->n_tried;
      stead_packet_add_entry (tried, g_strdup (stead_packet_person_name (making, i)), STEAD_TARGET_SKILLS, person);
      for (guint k = 0; k < hours->len; k++)
        minutes += ((const SteadPacketHours *) hours->pdata[k])->minutes;
      stead_packet_add_entry (figure, g_strdup (stead_packet_person_name (making, i)), STEAD_TARGET_HOURS, person);
    }
  sum = stead_packet_hm (minutes);
  figure->text = g_strdup_printf (_("Hours worked: %s"), sum);
  stead_packet_add_row (table, g_strdup (C_("figure of a packet", "Hours worked")), stead_packet_marked (sum, figure));
  skills = g_strdup_printf ("%d", n_tried);
  tried->text = g_strdup_printf (_("Skills tried: %s"), skills);
  stead_packet_add_row (table, g_strdup (C_("figure of a packet", "Skills tried")), stead_packet_marked (skills, tried));
  stead_packet_add_row (table, g_strdup (C_("figure of a packet", "Earned by the whole farm")),
                        stead_packet_marked_net (making, statement));
  return TRUE;
}

/* --- plan ------------------------------------------------------------------------------ */

static gboolean
add_goals (SteadPacketMaking  *making,
           guint               n,
           guint              *n_goals,
           GError            **error)
{
  g_autoptr(GPtrArray) goals = stead_goal_repo_list (making->store, stead_packet_person_id (making, n), error);
  SteadCardTable *table = NULL;

  if (goals == NULL)
    return FALSE;
  *n_goals += goals->len;
  for (guint i = 0; i < goals->len; i++)
    {
      const SteadGoal *goal = goals->pdata[i];

      if (table == NULL)
        table = stead_packet_add_table (making, 4, C_("column of goals", "Goal"), C_("column of goals", "Set"),
                                        C_("column of goals", "Due"), C_("column of goals", "Result"), NULL);
      stead_packet_add_row (table, g_strdup (goal->words), stead_day_format (goal->set_on, STEAD_DAY_STYLE_MEDIUM),
                            goal->due_on != STEAD_DAY_NONE ? stead_day_format (goal->due_on, STEAD_DAY_STYLE_MEDIUM) : NULL,
                            goal->result != NULL ? g_strdup (goal->result)
                            : goal->reached_on != STEAD_DAY_NONE ? g_strdup (C_("goal", "reached"))
                                                                 : g_strdup (C_("goal", "under way")));
    }
  return TRUE;
}

static gboolean
add_trainings (SteadPacketMaking  *making,
               guint               n,
               GError            **error)
{
  g_autoptr(GPtrArray) trainings = stead_packet_repo_trainings (making->store, stead_packet_person_id (making, n), error);
  SteadCardTable *table = NULL;

  for (guint i = 0; trainings != NULL && i < trainings->len; i++)
    {
      const SteadPacketTraining *training = trainings->pdata[i];

      if (table == NULL)
        table = stead_packet_add_table (making, 3, C_("column of trainings", "Trained for"),
                                        C_("column of trainings", "Given"), C_("column of trainings", "Until"), NULL);
      stead_packet_add_row (table, g_strdup (training->subject),
                            stead_day_format (training->given_on, STEAD_DAY_STYLE_MEDIUM),
                            training->until_on != STEAD_DAY_NONE
                            ? stead_day_format (training->until_on, STEAD_DAY_STYLE_MEDIUM) : NULL);
    }
  return trainings != NULL;
}

gboolean
stead_packet_make_plan (SteadPacketMaking  *making,
                        GError            **error)
{
  guint n_goals = 0;

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      add_name (making, i);
      if (!add_goals (making, i, &n_goals, error) || !add_trainings (making, i, error))
        return FALSE;
    }
  if (n_goals == 0)
    stead_packet_blank (making, g_strdup (_("Enter a goal with the day by which it is to be reached.")),
                        STEAD_TARGET_JOURNAL, stead_packet_person_id (making, 0));
  return TRUE;
}

/* --- skills, roles ------------------------------------------------------------------------ */

/* What has no place of its own is seen among the person's hours, pictures or skills. */
static void
add_evidence (SteadPacketMaking   *making,
              SteadPacketFigure   *figure,
              const SteadEvidence *evidence,
              gint64               person_id)
{
  SteadTarget target = stead_evidence_target (evidence), own = STEAD_TARGET_SKILLS;
  char *text = stead_evidence_text (evidence, making->answer->farm);

  if (!evidence->is_gone && evidence->what == STEAD_EVIDENCE_WORK)
    own = STEAD_TARGET_HOURS;
  else if (!evidence->is_gone && evidence->what == STEAD_EVIDENCE_SHOT)
    own = STEAD_TARGET_JOURNAL;
  if (target != STEAD_TARGET_NONE)
    stead_packet_add_entry (figure, text, target, evidence->target_id);
  else
    stead_packet_add_entry (figure, text, own, person_id);
}

static gboolean
add_skills (SteadPacketMaking  *making,
            guint               n,
            int                *n_tried,
            GError            **error)
{
  g_autoptr(SteadSkillAnswer) skills = stead_skill_answer_new (making->store, stead_packet_person_id (making, n), error);
  SteadCardTable *table;

  if (skills == NULL)
    return FALSE;
  *n_tried += skills->n_tried;
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (skills->sentence));
  if (skills->n_tried == 0)
    return TRUE;
  table = stead_packet_add_table (making, 5, C_("column of skills", "Code"), C_("column of skills", "Skill"),
                                  C_("column of skills", "How well"), C_("column of skills", "Shown by"),
                                  C_("column of skills", "Checked"), NULL);
  for (guint i = 0; i < skills->rows->len; i++)
    {
      const SteadSkillRow *row = skills->rows->pdata[i];
      SteadPacketFigure *figure = NULL;
      g_autofree char *shown = NULL;

      if (row->best == 0)
        continue;
      for (guint k = 0; k < row->evidence->len; k++)
        {
          const SteadEvidence *evidence = row->evidence->pdata[k];

          if (figure == NULL)
            figure = stead_packet_add_figure (making, g_strdup (row->skill->words));
          add_evidence (making, figure, evidence, stead_packet_person_id (making, n));
        }
      if (figure != NULL)
        shown = figure->n_entries == 1
                ? g_strdup (((const SteadPacketEntry *) figure->entries->pdata[0])->text)
                : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d row of the log", "%d rows of the log",
                                                figure->n_entries), (int) figure->n_entries);
      stead_packet_add_row (table, g_strdup (row->skill->code), g_strdup (row->skill->words),
                            g_strdup (stead_skill_level_text (row->best)),
                            figure != NULL ? stead_packet_marked (shown, figure) : NULL,
                            g_strdup (row->is_checked ? C_("skill", "yes") : NULL));
    }
  return TRUE;
}

gboolean
stead_packet_make_skills (SteadPacketMaking  *making,
                          GError            **error)
{
  int n_tried = 0;

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      add_name (making, i);
      if (!add_skills (making, i, &n_tried, error))
        return FALSE;
    }
  if (n_tried == 0)
    stead_packet_blank (making, g_strdup (_("Enter which skills were tried, and choose what in the log shows them.")),
                        STEAD_TARGET_SKILLS, stead_packet_person_id (making, 0));
  return TRUE;
}

gboolean
stead_packet_make_roles (SteadPacketMaking  *making,
                         GError            **error)
{
  guint n_roles = 0;

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      g_autoptr(GPtrArray) roles = stead_role_held_repo_list (making->store, stead_packet_person_id (making, i), error);
      SteadCardTable *table = NULL;

      if (roles == NULL)
        return FALSE;
      if (roles->len > 0)
        add_name (making, i);
      n_roles += roles->len;
      for (guint k = 0; k < roles->len; k++)
        {
          const SteadRoleHeld *role = roles->pdata[k];

          if (table == NULL)
            table = stead_packet_add_table (making, 3, C_("column of roles", "Role or service"),
                                            C_("column of roles", "Kind"), C_("column of roles", "Days"), NULL);
          stead_packet_add_row (table, g_strdup (role->words),
                                g_strdup (role->is_service ? C_("kind of role", "service") : C_("kind of role", "role")),
                                role->to_on != STEAD_DAY_NONE ? stead_packet_days (role->from_on, role->to_on)
                                : stead_day_format (role->from_on, STEAD_DAY_STYLE_MEDIUM));
        }
    }
  if (n_roles == 0)
    stead_packet_blank (making, g_strdup (_("Enter a role that was held, or a service that was done.")),
                        STEAD_TARGET_JOURNAL, stead_packet_person_id (making, 0));
  return TRUE;
}

/* --- journal and the event's own sections ---------------------------------------------------- */

static guint
add_thoughts (SteadPacketMaking *making,
              GPtrArray         *thoughts)
{
  const SteadPacket *packet = making->answer->packet;
  guint n = 0;

  for (guint i = 0; i < thoughts->len; i++)
    {
      const SteadReflection *thought = thoughts->pdata[i];

      if (!thought->is_shown || thought->day < packet->from_on || thought->day > packet->to_on)
        continue;
      n++;
      stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_day_format (thought->day, STEAD_DAY_STYLE_MEDIUM));
      if (thought->question != NULL)
        stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (thought->question));
      stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_markup_escape_text (thought->text, -1));
    }
  return n;
}

gboolean
stead_packet_make_journal (SteadPacketMaking  *making,
                           GError            **error)
{
  guint n = 0;

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      g_autoptr(GPtrArray) thoughts = stead_reflection_repo_list (making->store, stead_packet_person_id (making, i),
                                                                  error);

      if (thoughts == NULL)
        return FALSE;
      add_name (making, i);
      n += add_thoughts (making, thoughts);
    }
  if (n == 0)
    stead_packet_blank (making, g_strdup (_("Write a thought on what happened, and choose it for the packet.")),
                        STEAD_TARGET_JOURNAL, stead_packet_person_id (making, 0));
  return TRUE;
}

/* Scores of the whole team and of whose packet it is; those of others in the team are not theirs to show. */
static GPtrArray *
scores_of (SteadPacketMaking  *making,
           GError            **error)
{
  GPtrArray *list = stead_event_repo_scores (making->store, making->answer->event->id, error);

  for (guint i = list != NULL ? list->len : 0; i > 0; i--)
    {
      gint64 person_id = ((const SteadEventScore *) list->pdata[i - 1])->person_id;
      gboolean is_ours = person_id == 0;

      for (guint k = 0; k < making->answer->people->len; k++)
        is_ours |= stead_packet_person_id (making, k) == person_id;
      if (!is_ours)
        g_ptr_array_remove_index (list, i - 1);
    }
  return list;
}

static gboolean
add_scores (SteadPacketMaking  *making,
            GError            **error)
{
  const SteadEvent *event = making->answer->event;
  g_autoptr(GPtrArray) list = scores_of (making, error);
  g_autoptr(SteadEventScores) scores = list != NULL ? stead_event_scores_new (list, event->day) : NULL;
  g_autofree char *text = NULL;
  SteadPacketFigure *figure;

  if (scores == NULL)
    return FALSE;
  if (scores->text == NULL)
    return TRUE;
  figure = stead_packet_add_figure (making, g_strdup (_("How practice went")));
  for (guint i = 0; i < list->len; i++)
    stead_packet_add_entry (figure, stead_event_score_text (list->pdata[i]), STEAD_TARGET_EVENT, event->id);
  text = g_strdup (scores->text);
  stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_packet_marked (figure->text, figure));
  stead_packet_add_scores (making, g_steal_pointer (&scores), g_steal_pointer (&text));
  return TRUE;
}

gboolean
stead_packet_make_own (SteadPacketMaking  *making,
                       GError            **error)
{
  const SteadEvent *event = making->answer->event;
  g_autoptr(GPtrArray) needs = NULL;
  guint n_own = 0, n_empty = 0;

  if (event == NULL)
    {
      stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("This packet is for no event.")));
      return TRUE;
    }
  needs = stead_event_repo_needs (making->store, event->id, error);
  if (needs == NULL)
    return FALSE;
  for (guint i = 0; i < needs->len; i++)
    {
      const SteadEventNeed *need = needs->pdata[i];

      if (need->what != STEAD_NEED_OWN)
        continue;
      n_own++;
      n_empty += need->text == NULL;
      stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, g_strdup (need->words));
      if (need->text != NULL)
        stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_markup_escape_text (need->text, -1));
      else
        stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("Nothing recorded.")));
    }
  if (n_own == n_empty && n_own > 0)
    {
      making->part->is_blank = TRUE;
      making->part->lack = g_strdup (_("Write the sections that the event asks for."));
      making->part->target = STEAD_TARGET_EVENT;
      making->part->target_id = event->id;
    }
  if (n_own == 0)
    stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("The event asks for no section of its own.")));
  return add_scores (making, error);
}
