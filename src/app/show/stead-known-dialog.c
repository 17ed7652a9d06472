/* stead-known-dialog.c - work that the farm knows of, to be taken over into the hours.
 *
 * Nothing is added by itself: each piece is opened, mended and recorded by a person.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/show/stead-known-dialog.h"

#include "answer/stead-hours-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/show/stead-hours-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

struct _SteadKnownDialog
{
  GtkWindow   parent_instance;

  SteadDesk  *desk;
  SteadDay    from, to;

  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadKnownDialog, stead_known_dialog, GTK_TYPE_WINDOW)

static const SteadWorkDraft *
draft_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (draft_of (item)->day, STEAD_DAY_STYLE_SHORT);
}

static char *
who_text (gpointer item,
          gpointer data)
{
  return g_strdup (draft_of (item)->person_name);
}

static char *
what_text (gpointer item,
           gpointer data)
{
  return stead_hours_draft_text (draft_of (item));
}

static char *
guess_text (gpointer item,
            gpointer data)
{
  double minutes = draft_of (item)->minutes;

  return isnan (minutes) ? g_strdup ("") : stead_hours_words ((gint64) round (minutes));
}

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return (draft_of (a)->day > draft_of (b)->day) - (draft_of (a)->day < draft_of (b)->day);
}

static int
compare_people (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  return g_utf8_collate (draft_of (a)->person_name, draft_of (b)->person_name);
}

static void
take_cb (SteadKnownDialog *self)
{
  gpointer row = stead_table_get_selected (self->table);

  if (row != NULL)
    stead_hours_dialog_show_draft (GTK_WIDGET (self), self->desk, draft_of (row));
}

static void
activate_cb (gpointer item,
             gpointer data)
{
  stead_hours_dialog_show_draft (GTK_WIDGET (data), STEAD_KNOWN_DIALOG (data)->desk, draft_of (item));
}

static void
refresh (SteadKnownDialog *self)
{
  g_autoptr(GError) error = NULL;
  GPtrArray *drafts = stead_work_repo_drafts (stead_desk_get_store (self->desk), self->from, self->to, &error);
  g_autoptr(GListModel) rows = NULL;

  if (drafts == NULL)
    {
      stead_desk_say (self->desk, error->message, FALSE);
      return;
    }
  rows = stead_rows_from_array (drafts, (GDestroyNotify) stead_work_draft_free);
  stead_table_set_model (self->table, rows);
  stead_table_select (self->table, 0);
}

static void
stead_known_dialog_dispose (GObject *object)
{
  SteadKnownDialog *self = STEAD_KNOWN_DIALOG (object);

  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_known_dialog_parent_class)->dispose (object);
}

static void
stead_known_dialog_class_init (SteadKnownDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_known_dialog_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
make_buttons (SteadKnownDialog *self,
              GtkWidget        *box)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *close = gtk_button_new_with_label (_("Close")), *take = gtk_button_new_with_label (_("Take over…"));

  gtk_widget_set_halign (row, GTK_ALIGN_END);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (close), "window.close");
  gtk_widget_add_css_class (take, "primary");
  g_signal_connect_swapped (take, "clicked", G_CALLBACK (take_cb), self);
  gtk_box_append (GTK_BOX (row), close);
  gtk_box_append (GTK_BOX (row), take);
  gtk_box_append (GTK_BOX (box), row);
}

static void
stead_known_dialog_init (SteadKnownDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_add_css_class (GTK_WIDGET (self), "steading");
  gtk_widget_add_css_class (box, "page-body");
  gtk_box_append (GTK_BOX (box), stead_make_label (_("The farm's log says who worked, but not how long. Open a piece, mend the "
                                                     "time, and record it; what you leave here is not counted."), NULL));
  self->table = STEAD_TABLE (stead_table_new (_("Known work")));
  gtk_widget_add_css_class (GTK_WIDGET (self->table), "card");
  gtk_widget_add_css_class (GTK_WIDGET (self->table), "flush");
  gtk_widget_set_overflow (GTK_WIDGET (self->table), GTK_OVERFLOW_HIDDEN);
  gtk_widget_set_vexpand (GTK_WIDGET (self->table), TRUE);
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_days, self);
  stead_table_add_column (self->table, _("Who"), FALSE, FALSE, who_text, NULL, compare_people, self);
  stead_table_add_column (self->table, _("What the log says"), FALSE, TRUE, what_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Usual time"), TRUE, FALSE, guess_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Nothing is left: all known work of the last two weeks has its hours."));
  stead_table_set_activate (self->table, activate_cb, self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->table));
  make_buttons (self, box);
  gtk_window_set_child (GTK_WINDOW (self), box);
}

void
stead_known_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         SteadDay   from,
                         SteadDay   to)
{
  SteadKnownDialog *self = g_object_new (STEAD_TYPE_KNOWN_DIALOG, "title", _("Known work"), "modal", TRUE,
                                         "default-width", 680, "default-height", 460, NULL);

  self->desk = g_object_ref (desk);
  self->from = from;
  self->to = to;
  g_signal_connect_object (desk, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  gtk_window_present (GTK_WINDOW (self));
}
