/* stead-journal-pane.c - goals, roles, thoughts and pictures of one person. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-journal-answer.h"
#include "app/show/stead-journal-pane.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/show/stead-show-picks.h"

struct _SteadJournalPane
{
  SteadPickPane  parent_instance;

  SteadTable    *table;
};

G_DEFINE_FINAL_TYPE (SteadJournalPane, stead_journal_pane, STEAD_TYPE_PICK_PANE)

static void
line_free (gpointer data)
{
  SteadJournalRow *line = data;

  g_free (line->name);
  g_free (line->text);
  g_free (line->state);
  g_free (line);
}

static const SteadJournalRow *
line_of (gpointer item)
{
  return stead_row_get (STEAD_ROW (item));
}

static char *day_text (gpointer item, gpointer data) { return stead_day_format (line_of (item)->day, STEAD_DAY_STYLE_MEDIUM); }
static char *kind_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->name); }
static char *words_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->text); }
static char *state_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->state); }

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  SteadDay one = line_of ((gpointer) a)->day, other = line_of ((gpointer) b)->day;

  return (one > other) - (one < other);
}

static void
stead_journal_pane_show_none (SteadPickPane *pane)
{
  stead_pane_say (STEAD_PANE (pane), _("Nobody is entered yet."), NULL);
  stead_pick_pane_empty (STEAD_JOURNAL_PANE (pane)->table);
}

static void
stead_journal_pane_show_chosen (SteadPickPane *pane,
                                gint64         id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadJournalAnswer) answer = stead_journal_answer_new (stead_pane_get_store (STEAD_PANE (pane)), id, &error);
  g_autoptr(GListModel) rows = NULL;

  stead_pane_say (STEAD_PANE (pane), answer != NULL ? answer->sentence : NULL, error);
  if (answer == NULL)
    return;
  g_ptr_array_set_free_func (answer->rows, NULL);
  rows = stead_rows_from_array (g_steal_pointer (&answer->rows), line_free);
  stead_table_set_model (STEAD_JOURNAL_PANE (pane)->table, rows);
}

static void
change (SteadPane             *pane,
        const SteadJournalRow *line)
{
  SteadDesk *desk = stead_pane_get_desk (pane);
  gint64 person_id = stead_pick_pane_get (STEAD_PICK_PANE (pane));

  switch (line->kind)
    {
    case STEAD_JOURNAL_GOAL:    stead_goal_dialog_show (GTK_WIDGET (pane), desk, person_id, line->id); break;
    case STEAD_JOURNAL_ROLE:    stead_role_dialog_show (GTK_WIDGET (pane), desk, person_id, line->id); break;
    case STEAD_JOURNAL_THOUGHT: stead_thought_dialog_show (GTK_WIDGET (pane), desk, person_id, line->id); break;
    case STEAD_JOURNAL_PICTURE: stead_shot_dialog_show (GTK_WIDGET (pane), desk, person_id, line->id); break;
    default:                    g_return_if_reached ();
    }
}

static void
row_cb (gpointer item,
        gpointer data)
{
  change (data, line_of (item));
}

static void
change_cb (SteadPane *pane)
{
  const SteadJournalRow *line = stead_pane_get_chosen (pane);

  if (line != NULL)
    change (pane, line);
}

/* A new one belongs to somebody. */
static gint64
person_of (SteadPane *pane)
{
  gint64 id = stead_pick_pane_get (STEAD_PICK_PANE (pane));

  if (id == 0)
    stead_desk_say (stead_pane_get_desk (pane), _("Enter a person first."), FALSE);
  return id;
}

#define NEW_ONE(name, dialog) \
  static void \
  name (SteadPane *pane) \
  { \
    gint64 id = person_of (pane); \
    if (id != 0) \
      dialog (GTK_WIDGET (pane), stead_pane_get_desk (pane), id, 0); \
  }

NEW_ONE (thought_cb, stead_thought_dialog_show)
NEW_ONE (goal_cb, stead_goal_dialog_show)
NEW_ONE (role_cb, stead_role_dialog_show)
NEW_ONE (shot_cb, stead_shot_dialog_show)

static void
stead_journal_pane_class_init (SteadJournalPaneClass *klass)
{
  STEAD_PICK_PANE_CLASS (klass)->list = stead_show_picks_list;
  STEAD_PICK_PANE_CLASS (klass)->show_chosen = stead_journal_pane_show_chosen;
  STEAD_PICK_PANE_CLASS (klass)->show_none = stead_journal_pane_show_none;
}

static void
stead_journal_pane_init (SteadJournalPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  stead_pick_pane_add_pick (STEAD_PICK_PANE (self), _("Person"));
  self->table = stead_pane_add_table (pane, _("Journal"));
  stead_table_add_column (self->table, C_("column of a journal", "Day"), FALSE, FALSE, day_text, NULL, compare_days, self);
  stead_table_add_column (self->table, C_("column of a journal", "Kind"), FALSE, FALSE, kind_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of a journal", "What"), FALSE, TRUE, words_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("column of a journal", "State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Goals, roles and services, thoughts and pictures belong here. The packet takes "
                                        "them up. Begin with a goal, or with a thought on what happened."));
  stead_table_set_activate (self->table, row_cb, self);
  stead_pane_add_button (pane, _("Write a thought…"), G_CALLBACK (thought_cb));
  stead_pane_add_button (pane, _("Goal…"), G_CALLBACK (goal_cb));
  stead_pane_add_button (pane, _("Role or service…"), G_CALLBACK (role_cb));
  stead_pane_add_button (pane, _("Picture…"), G_CALLBACK (shot_cb));
  stead_pane_add_button (pane, _("Change the entry…"), G_CALLBACK (change_cb));
}
