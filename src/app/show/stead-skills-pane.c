/* stead-skills-pane.c - what one person can do, and what shows it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-skill-answer.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/show/stead-show-picks.h"
#include "app/show/stead-skills-pane.h"
#include "app/stead-why-box.h"

struct _SteadSkillsPane
{
  SteadPickPane  parent_instance;

  SteadTable    *table;
  SteadWhyBox   *whys;
};

G_DEFINE_FINAL_TYPE (SteadSkillsPane, stead_skills_pane, STEAD_TYPE_PICK_PANE)

/* One row of the table. */
typedef struct
{
  char        *code, *words, *level, *shown, *checked;
  gint64       skill_id, try_id;   /* the last try that waits for an advisor; 0: none */
  SteadTarget  target;
  gint64       target_id;
} Line;

static void
line_free (gpointer data)
{
  Line *line = data;

  g_free (line->code);
  g_free (line->words);
  g_free (line->level);
  g_free (line->shown);
  g_free (line->checked);
  g_free (line);
}

static const Line *
line_of (gpointer item)
{
  return stead_row_get (STEAD_ROW (item));
}

static char *code_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->code); }
static char *words_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->words); }
static char *level_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->level); }
static char *shown_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->shown); }
static char *checked_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->checked); }

static Line *
line_new (const SteadSkillRow *row,
          const SteadFarm     *farm)
{
  Line *line = g_new0 (Line, 1);

  line->skill_id = row->skill->id;
  line->code = g_strdup (row->skill->code != NULL ? row->skill->code : "");
  line->words = g_strdup (row->skill->words);
  line->level = g_strdup (stead_skill_level_text (row->best));
  line->checked = g_strdup (row->is_checked ? C_("skill", "yes") : "");
  for (guint i = 0; i < row->tries->len; i++)
    if (((const SteadSkillTry *) row->tries->pdata[i])->checked_by == 0)
      line->try_id = ((const SteadSkillTry *) row->tries->pdata[i])->id;
  if (row->evidence->len > 0)
    {
      const SteadEvidence *last = row->evidence->pdata[row->evidence->len - 1];
      g_autofree char *text = stead_evidence_text (last, farm);

      line->target = stead_evidence_target (last);
      line->target_id = last->target_id;
      line->shown = row->evidence->len == 1 ? g_steal_pointer (&text)
                    /* Translators: a row of the log; how many more there are. */
                    : g_strdup_printf (_("%1$s, and %2$u more"), text, row->evidence->len - 1);
    }
  else
    line->shown = g_strdup ("");
  return line;
}

static void
stead_skills_pane_show_none (SteadPickPane *pane)
{
  g_autoptr(GPtrArray) none = g_ptr_array_new ();

  stead_pane_say (STEAD_PANE (pane), _("Nobody is entered yet."), NULL);
  stead_why_box_set (STEAD_SKILLS_PANE (pane)->whys, none);
  stead_pick_pane_empty (STEAD_SKILLS_PANE (pane)->table);
}

static void
stead_skills_pane_show_chosen (SteadPickPane *pane,
                               gint64         id)
{
  SteadSkillsPane *self = STEAD_SKILLS_PANE (pane);
  g_autoptr(GPtrArray) lines = g_ptr_array_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadSkillAnswer) answer = stead_skill_answer_new (stead_pane_get_store (STEAD_PANE (pane)), id, &error);
  g_autoptr(GPtrArray) whys = answer != NULL ? stead_skill_answer_whys (answer) : g_ptr_array_new ();
  g_autoptr(GListModel) rows = NULL;

  stead_pane_say (STEAD_PANE (pane), answer != NULL ? answer->sentence : NULL, error);
  stead_why_box_set (self->whys, whys);
  if (answer == NULL)
    return;
  for (guint i = 0; i < answer->rows->len; i++)
    g_ptr_array_add (lines, line_new (answer->rows->pdata[i], answer->farm));
  rows = stead_rows_from_array (g_steal_pointer (&lines), line_free);
  stead_table_set_model (self->table, rows);
}

static void
try_cb (SteadPane *pane)
{
  SteadRow *row = stead_table_get_selected (STEAD_SKILLS_PANE (pane)->table);

  stead_try_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), stead_pick_pane_get (STEAD_PICK_PANE (pane)),
                         row != NULL ? line_of (row)->skill_id : 0, 0);
}

/* The chosen row, if a try of it waits for an advisor; else says so. */
static const Line *
open_line (SteadPane *pane)
{
  const Line *line = stead_pane_get_chosen (pane);

  if (line != NULL && line->try_id == 0)
    stead_desk_say (stead_pane_get_desk (pane), _("There is no try of this skill that waits to be checked."), FALSE);
  return line != NULL && line->try_id != 0 ? line : NULL;
}

static void
check_cb (SteadPane *pane)
{
  const Line *line = open_line (pane);

  if (line != NULL)
    stead_try_check_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), line->try_id, line->words);
}

static void
mend_cb (SteadPane *pane)
{
  const Line *line = open_line (pane);

  if (line != NULL)
    stead_try_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), stead_pick_pane_get (STEAD_PICK_PANE (pane)),
                           line->skill_id, line->try_id);
}

static void
row_cb (gpointer item,
        gpointer data)
{
  const Line *line = line_of (item);

  if (line->target != STEAD_TARGET_NONE)
    stead_desk_jump (stead_pane_get_desk (data), line->target, line->target_id);
  else
    stead_desk_say (stead_pane_get_desk (data), _("Nothing in the log shows this skill yet."), FALSE);
}

static void skill_cb (SteadPane *pane) { stead_skill_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0); }

static void
change_cb (SteadPane *pane)
{
  const Line *line = stead_pane_get_chosen (pane);

  if (line != NULL)
    stead_skill_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), line->skill_id);
}

static void
stead_skills_pane_class_init (SteadSkillsPaneClass *klass)
{
  STEAD_PICK_PANE_CLASS (klass)->list = stead_show_picks_list;
  STEAD_PICK_PANE_CLASS (klass)->show_chosen = stead_skills_pane_show_chosen;
  STEAD_PICK_PANE_CLASS (klass)->show_none = stead_skills_pane_show_none;
}

static void
stead_skills_pane_init (SteadSkillsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  stead_pick_pane_add_pick (STEAD_PICK_PANE (self), _("Person"));
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("Skills"));
  stead_table_add_column (self->table, C_("column of skills", "Code"), FALSE, FALSE, code_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of skills", "Skill"), FALSE, TRUE, words_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of skills", "How well"), FALSE, FALSE, level_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of skills", "Shown by"), FALSE, TRUE, shown_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of skills", "Checked"), FALSE, FALSE, checked_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("The school's own list of skills belongs here. Enter the first one."));
  stead_table_set_activate (self->table, row_cb, self);
  stead_pane_add_button (pane, _("Enter a try…"), G_CALLBACK (try_cb));
  stead_pane_add_button (pane, _("Change the last try…"), G_CALLBACK (mend_cb));
  stead_pane_add_button (pane, _("Check a skill…"), G_CALLBACK (check_cb));
  stead_pane_add_button (pane, _("New skill…"), G_CALLBACK (skill_cb));
  stead_pane_add_button (pane, _("Change the skill…"), G_CALLBACK (change_cb));
}
