/* stead-close-dialog.c - an advisor closes the books through a day. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-close-dialog.h"

#include "app/keep/stead-cash-picks.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-closing-repo.h"
#include "store/stead-farm-repo.h"

struct _SteadCloseDialog
{
  SteadDialog  parent_instance;

  SteadDay     through;

  GtkLabel    *state, *about, *bars;
  SteadField  *day, *note;
  SteadPick   *advisor;
};

G_DEFINE_FINAL_TYPE (SteadCloseDialog, stead_close_dialog, STEAD_TYPE_DIALOG)

/* --- what stands against it ------------------------------------------------------------- */

static char *
bars_text (const SteadClosingBars *bars)
{
  g_autofree char *counts = NULL, *sheets = NULL;

  if (bars->open_counts > 0)
    counts = g_strdup_printf (ngettext ("%u count of money differs and has no reason yet.",
                                        "%u counts of money differ and have no reason yet.",
                                        (gulong) bars->open_counts), (guint) bars->open_counts);
  if (bars->open_sheets > 0)
    sheets = g_strdup_printf (ngettext ("%u statement does not agree with the book yet.",
                                        "%u statements do not agree with the book yet.",
                                        (gulong) bars->open_sheets), (guint) bars->open_sheets);
  if (counts != NULL && sheets != NULL)
    return g_strjoin (" ", counts, sheets, NULL);
  return counts != NULL ? g_steal_pointer (&counts) : g_steal_pointer (&sheets);
}

static void
show_bars (SteadCloseDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  SteadClosingBars bars;
  SteadDay day = STEAD_DAY_NONE;
  g_autofree char *text = NULL;

  if (desk == NULL)
    return;
  if (stead_cash_picks_peek_day (self->day, stead_desk_get_store (desk), &day)
      && stead_closing_repo_bars (stead_desk_get_store (desk), day, &bars, NULL))
    text = bars_text (&bars);
  stead_ui_tell (self->bars, text);
}

/* --- closing ------------------------------------------------------------------------------- */

static gboolean
close_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  SteadCloseDialog *self = data;

  return stead_closing_repo_close (store, self->through, stead_pick_get (self->advisor),
                                   stead_field_is_empty (self->note) ? NULL : stead_field_get_text (self->note), error);
}

static gboolean
stead_close_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadCloseDialog *self = STEAD_CLOSE_DIALOG (dialog);
  g_autofree char *day = NULL, *step = NULL;

  if (!stead_field_read_day (self->day, STEAD_DAY_NONE, &self->through))
    return FALSE;
  day = stead_day_format (self->through, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: name of a step to undo; a day. */
  step = g_strdup_printf (_("closing the books through %s"), day);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, close_act, self, error);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
stead_close_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_CLOSE_DIALOG);
  G_OBJECT_CLASS (stead_close_dialog_parent_class)->dispose (object);
}

static void
stead_close_dialog_class_init (SteadCloseDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_close_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_close_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-close-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadCloseDialog, state);
  gtk_widget_class_bind_template_child (widget_class, SteadCloseDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadCloseDialog, bars);
  gtk_widget_class_bind_template_child (widget_class, SteadCloseDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadCloseDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadCloseDialog, advisor);
}

static void
stead_close_dialog_init (SteadCloseDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->day, "changed", G_CALLBACK (show_bars), self);
}

static void
fill_advisors (SteadCloseDialog *self,
               SteadStore       *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  stead_pick_clear (self->advisor);
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->role == STEAD_PERSON_ADVISOR && person->left_on == STEAD_DAY_NONE)
        stead_pick_append (self->advisor, person->id, person->name);
    }
  stead_pick_show (self->advisor, 0);
  if (stead_pick_count (self->advisor) == 0)
    stead_pick_say (self->advisor, _("There is no advisor yet. Find “People” with Ctrl+K and enter one."), TRUE);
}

static void
show_closed (SteadCloseDialog *self,
             SteadStore       *store)
{
  g_autoptr(GPtrArray) closings = stead_closing_repo_list (store, NULL);
  const SteadClosing *last = closings != NULL && closings->len > 0 ? closings->pdata[0] : NULL;
  g_autofree char *through = NULL, *on = NULL, *text = NULL;

  if (last == NULL)
    return;
  through = stead_day_format (last->through_day, STEAD_DAY_STYLE_MEDIUM);
  on = stead_day_format (last->closed_on, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: two days. */
  text = g_strdup_printf (_("The books are closed through %s. That was done on %s."), through, on);
  gtk_label_set_text (self->state, text);
  gtk_widget_show (GTK_WIDGET (self->state));
}

/* The last day of the month before @today. */
static SteadDay
last_month_end (SteadDay today)
{
  int year, month, day;

  stead_day_split (today, &year, &month, &day);
  return today - day;
}

void
stead_close_dialog_show (GtkWidget *parent,
                         SteadDesk *desk)
{
  SteadStore *store;
  SteadCloseDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  store = stead_desk_get_store (desk);
  self = g_object_new (STEAD_TYPE_CLOSE_DIALOG, "title", _("Close the books"), NULL);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, last_month_end (stead_store_get_today (store)));
  fill_advisors (self, store);
  show_closed (self, store);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  show_bars (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->day));
}
