/* stead-rota-pane.c - who does what on which weekday, and who of them still needs a training. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-rota-pane.h"

#include "app/show/stead-duty-dialog.h"
#include "app/show/stead-group-dialog.h"
#include "app/show/stead-turn-dialog.h"
#include "app/show/stead-weekday.h"
#include "core/stead-clock.h"
#include "store/stead-farm-repo.h"

struct _SteadRotaPane
{
  SteadPane   parent_instance;

  GPtrArray  *trainings, *groups, *people;   /* as they were read last */
  SteadDay    today;

  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadRotaPane, stead_rota_pane, STEAD_TYPE_PANE)

static const SteadTurn *
turn_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
weekday_text (gpointer item,
              gpointer data)
{
  return g_strdup (stead_weekday_words (turn_of (item)->weekday));
}

static char *
at_text (gpointer item,
         gpointer data)
{
  return stead_minute_format (turn_of (item)->at_minute);
}

static char *
duty_text (gpointer item,
           gpointer data)
{
  return g_strdup (turn_of (item)->duty_name);
}

static char *
who_text (gpointer item,
          gpointer data)
{
  return g_strdup (turn_of (item)->who);
}

static const char *
name_of (SteadRotaPane *self,
         gint64         person_id)
{
  for (guint i = 0; self->people != NULL && i < self->people->len; i++)
    if (((const SteadPerson *) self->people->pdata[i])->id == person_id)
      return ((const SteadPerson *) self->people->pdata[i])->name;
  return "?";
}

static void
add_untrained (SteadRotaPane   *self,
               const SteadTurn *turn,
               gint64           person_id,
               GString         *names)
{
  if (stead_training_holds (self->trainings, person_id, turn->needs, self->today))
    return;
  g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", name_of (self, person_id));
}

/* "Food handler: not trained are Ada B., Sam T." */
static char *
trained_text (gpointer item,
              gpointer data)
{
  SteadRotaPane *self = data;
  const SteadTurn *turn = turn_of (item);
  g_autoptr(GString) names = g_string_new (NULL);

  if (turn->needs == NULL || self->trainings == NULL || self->groups == NULL)
    return g_strdup ("");
  if (turn->person_id != 0)
    add_untrained (self, turn, turn->person_id, names);
  for (guint i = 0; i < self->groups->len; i++)
    {
      const SteadGroup *group = self->groups->pdata[i];

      for (guint k = 0; group->id == turn->group_id && k < group->person_ids->len; k++)
        add_untrained (self, turn, g_array_index (group->person_ids, gint64, k), names);
    }
  if (names->len == 0)
    /* Translators: what one is trained for. */
    return g_strdup_printf (_("%s: all are trained"), turn->needs);
  /* Translators: what one is trained for, names. */
  return g_strdup_printf (_("⚠ %1$s: not trained: %2$s"), turn->needs, names->str);
}

static int
compare_weekdays (gconstpointer a,
                  gconstpointer b,
                  gpointer      data)
{
  return turn_of (a)->weekday - turn_of (b)->weekday;
}

static void
activate_cb (gpointer item,
             gpointer data)
{
  stead_turn_dialog_show (GTK_WIDGET (data), stead_pane_get_desk (data), turn_of (item));
}

static void
new_cb (SteadPane *pane)
{
  stead_turn_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), NULL);
}

static void
change_cb (SteadPane *pane)
{
  const SteadTurn *turn = stead_pane_get_chosen (pane);

  if (turn != NULL)
    stead_turn_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), turn);
}

static void
groups_cb (SteadPane *pane)
{
  stead_group_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
duties_cb (SteadPane *pane)
{
  stead_duty_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
forget_read (SteadRotaPane *self)
{
  g_clear_pointer (&self->trainings, g_ptr_array_unref);
  g_clear_pointer (&self->groups, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
}

static void
stead_rota_pane_refresh (SteadPane *pane)
{
  SteadRotaPane *self = STEAD_ROTA_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(GListModel) rows = NULL;
  g_autofree char *text = NULL;
  GPtrArray *turns;
  guint n;

  forget_read (self);
  self->today = stead_store_get_today (store);
  self->trainings = stead_training_repo_list (store, 0, &error);
  self->groups = self->trainings != NULL ? stead_group_repo_list (store, &error) : NULL;
  self->people = self->groups != NULL ? stead_person_repo_list (store, &error) : NULL;
  turns = self->people != NULL ? stead_turn_repo_list (store, self->today, &error) : NULL;
  if (turns == NULL)
    {
      stead_pane_say (pane, NULL, error);
      return;
    }
  n = turns->len;
  text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%u turn</b> comes each week.", "<b>%u turns</b> come each week.", n),
                          n);
  stead_pane_say (pane, text, NULL);
  rows = stead_rows_from_array (turns, (GDestroyNotify) stead_turn_free);
  stead_table_set_model (self->table, rows);
}

static void
stead_rota_pane_finalize (GObject *object)
{
  forget_read (STEAD_ROTA_PANE (object));
  G_OBJECT_CLASS (stead_rota_pane_parent_class)->finalize (object);
}

static void
stead_rota_pane_class_init (SteadRotaPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_rota_pane_finalize;
  STEAD_PANE_CLASS (klass)->refresh = stead_rota_pane_refresh;
}

static void
stead_rota_pane_init (SteadRotaPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->table = stead_pane_add_table (pane, _("Rota"));
  stead_table_add_column (self->table, _("Each"), FALSE, FALSE, weekday_text, NULL, compare_weekdays, self);
  stead_table_add_column (self->table, _("At"), TRUE, FALSE, at_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Duty"), FALSE, TRUE, duty_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Whose turn"), FALSE, FALSE, who_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Training"), FALSE, FALSE, trained_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("No turn yet. A turn says what comes each week on a day, and whose it is: one "
                                        "person's or a whole group's."));
  stead_table_set_activate (self->table, activate_cb, self);
  stead_pane_add_button (pane, _("New turn…"), G_CALLBACK (new_cb));
  stead_pane_add_button (pane, _("Change turn…"), G_CALLBACK (change_cb));
  stead_pane_add_button (pane, _("Groups…"), G_CALLBACK (groups_cb));
  stead_pane_add_button (pane, _("Duties…"), G_CALLBACK (duties_cb));
}
