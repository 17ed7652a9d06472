/* stead-training-pane.c - who is trained for which tool or task, and until when. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-rota-pane.h"

#include "app/show/stead-turn-dialog.h"

struct _SteadTrainingPane
{
  SteadPane   parent_instance;

  SteadDay    today;
  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadTrainingPane, stead_training_pane, STEAD_TYPE_PANE)

#define SOON_DAYS 30   /* before it ends, to plan the next one (own rule) */

static const SteadTraining *
training_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
who_text (gpointer item,
          gpointer data)
{
  return g_strdup (training_of (item)->person_name);
}

static char *
subject_text (gpointer item,
              gpointer data)
{
  return g_strdup (training_of (item)->subject);
}

static char *
given_text (gpointer item,
            gpointer data)
{
  return stead_day_format (training_of (item)->given_on, STEAD_DAY_STYLE_MEDIUM);
}

static char *
until_text (gpointer item,
            gpointer data)
{
  SteadDay until = training_of (item)->until_on;

  return until != STEAD_DAY_NONE ? stead_day_format (until, STEAD_DAY_STYLE_MEDIUM) : g_strdup ("");
}

static char *
by_text (gpointer item,
         gpointer data)
{
  const char *by = training_of (item)->given_by_name;

  return g_strdup (by != NULL ? by : "");
}

static char *
state_text (gpointer item,
            gpointer data)
{
  SteadTrainingPane *self = data;
  SteadDay until = training_of (item)->until_on;

  if (until == STEAD_DAY_NONE || until > self->today + SOON_DAYS)
    return g_strdup (C_("training", "holds"));
  return g_strdup (until < self->today ? C_("training", "⚠ is over") : C_("training", "ends soon"));
}

static int
compare_until (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return (training_of (a)->until_on > training_of (b)->until_on) - (training_of (a)->until_on < training_of (b)->until_on);
}

static int
compare_people (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  return g_utf8_collate (training_of (a)->person_name, training_of (b)->person_name);
}

static void
activate_cb (gpointer item,
             gpointer data)
{
  stead_training_dialog_show (GTK_WIDGET (data), stead_pane_get_desk (data), training_of (item)->id);
}

static void
new_cb (SteadPane *pane)
{
  stead_training_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0);
}

static void
change_cb (SteadPane *pane)
{
  const SteadTraining *training = stead_pane_get_chosen (pane);

  if (training != NULL)
    stead_training_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), training->id);
}

static void
stead_training_pane_refresh (SteadPane *pane)
{
  SteadTrainingPane *self = STEAD_TRAINING_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  g_autoptr(GError) error = NULL;
  GPtrArray *trainings = stead_training_repo_list (store, 0, &error);
  g_autoptr(GListModel) rows = NULL;

  self->today = stead_store_get_today (store);
  if (trainings == NULL)
    {
      stead_pane_say (pane, NULL, error);
      return;
    }
  stead_pane_say (pane, _("Who was shown how, by whom, and until when it holds. What the law and the school ask for comes "
                          "first; nothing here says that work is safe."), NULL);
  rows = stead_rows_from_array (trainings, (GDestroyNotify) stead_training_free);
  stead_table_set_model (self->table, rows);
}

static void
stead_training_pane_class_init (SteadTrainingPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_training_pane_refresh;
}

static void
stead_training_pane_init (SteadTrainingPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->table = stead_pane_add_table (pane, _("Trainings"));
  stead_table_add_column (self->table, _("Who"), FALSE, FALSE, who_text, NULL, compare_people, self);
  stead_table_add_column (self->table, _("For which tool or task"), FALSE, TRUE, subject_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Given on"), FALSE, FALSE, given_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Holds until"), FALSE, FALSE, until_text, NULL, compare_until, self);
  stead_table_add_column (self->table, _("Given by"), FALSE, FALSE, by_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("State"), FALSE, FALSE, state_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("No training yet. Enter who was shown how to use a tool, and until when that holds."));
  stead_table_set_activate (self->table, activate_cb, self);
  stead_pane_add_button (pane, _("New training…"), G_CALLBACK (new_cb));
  stead_pane_add_button (pane, _("Change training…"), G_CALLBACK (change_cb));
}
