/* stead-count-dialog.c - two people count the store room, in one place or everywhere.
 *
 * A lot that nobody counted is left out; a difference needs a reason and becomes a
 * movement, all in one step.  Another day or place brings other lots; what was typed for
 * a lot that is among them stays.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-count-dialog.h"

#include "answer/stead-store-room-why.h"
#include "app/keep/stead-cash-picks.h"
#include "app/keep/stead-count-row.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-store-watch.h"

/* Of the grid: below the sentence that they work out. */
#define WHYS_ROW 3

struct _SteadCountDialog
{
  SteadDialog      parent_instance;

  SteadStockCount *count;      /* (nullable): the sheet being filled in */
  GPtrArray       *rows;       /* of SteadCountRow, not owned: one a line */

  GtkBox          *list;
  GtkLabel        *sum;
  SteadField      *day, *note;
  SteadPick       *place, *first, *second;
  GtkGrid         *grid;
  SteadWhyBox     *whys;
};

G_DEFINE_FINAL_TYPE (SteadCountDialog, stead_count_dialog, STEAD_TYPE_DIALOG)

/* --- the sheet ------------------------------------------------------------------------- */

static void
show_whys (SteadCountDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  g_autoptr(GPtrArray) whys = desk == NULL || self->count == NULL ? g_ptr_array_new ()
                              : stead_count_sheet_whys (stead_desk_get_store (desk), self->count);

  stead_why_box_set (self->whys, whys);
}

static void
update_sum (SteadCountDialog *self)
{
  guint counted = 0, differ = 0;
  g_autofree char *lots = NULL, *text = NULL;

  for (guint i = 0; i < self->rows->len; i++)
    {
      SteadCountLine *line = self->count->lines->pdata[i];
      gboolean differs;

      counted += stead_count_row_peek (self->rows->pdata[i], &line->counted_base, &differs);
      differ += differs;
    }
  lots = g_strdup_printf (ngettext ("%u lot should be there.", "%u lots should be there.", self->rows->len),
                          self->rows->len);
  if (self->rows->len == 0)
    text = g_strdup (_("Nothing should lie there on that day."));
  else if (counted == 0)
    /* Translators: a whole sentence on the number of lots comes first. */
    text = g_strdup_printf (_("%s Count first, then compare: leave empty what was not counted."), lots);
  else
    /* Translators: the same sentence, then how many were counted and how many of them differ. */
    text = g_strdup_printf (_("%s Counted so far: <b>%u</b>; different from the record: <b>%u</b>."), lots, counted, differ);
  gtk_label_set_markup (self->sum, text);
  show_whys (self);
}

static SteadCountRow *
row_of (GPtrArray *rows,
        gint64     lot_id)
{
  for (guint i = 0; i < rows->len; i++)
    if (stead_count_row_get_lot (rows->pdata[i]) == lot_id)
      return rows->pdata[i];
  return NULL;
}

static void
add_rows (SteadCountDialog *self,
          GPtrArray        *before)
{
  for (guint i = 0; self->count != NULL && i < self->count->lines->len; i++)
    {
      const SteadCountLine *line = self->count->lines->pdata[i];
      GtkWidget *row = stead_count_row_new (line);
      SteadCountRow *old = row_of (before, line->lot_id);

      if (old != NULL)
        stead_count_row_take (STEAD_COUNT_ROW (row), old);
      g_signal_connect_swapped (row, "changed", G_CALLBACK (update_sum), self);
      gtk_box_append (self->list, row);
      g_ptr_array_add (self->rows, row);
    }
}

static void
show_sheet (SteadCountDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  g_autoptr(GPtrArray) before = g_steal_pointer (&self->rows);
  g_autoptr(GError) error = NULL;
  SteadDay day = STEAD_DAY_NONE;

  self->rows = g_ptr_array_new ();
  g_clear_pointer (&self->count, stead_stock_count_free);
  if (desk != NULL && stead_cash_picks_peek_day (self->day, stead_desk_get_store (desk), &day))
    self->count = stead_count_repo_sheet (stead_desk_get_store (desk), stead_pick_get (self->place), day, &error);
  add_rows (self, before);
  for (guint i = 0; i < before->len; i++)
    gtk_box_remove (self->list, before->pdata[i]);
  update_sum (self);
  if (error != NULL)
    stead_dialog_show_error (STEAD_DIALOG (self), error->message);
}

/* --- saving ---------------------------------------------------------------------------------- */

static gboolean
check_people (SteadCountDialog *self)
{
  gint64 first = stead_pick_get (self->first), second = stead_pick_get (self->second);
  gboolean bad = second == 0 || first == second;

  stead_pick_say (self->first, first == 0 ? _("Choose who counted.") : NULL, TRUE);
  stead_pick_say (self->second, bad ? _("Choose another person: two people count the store room together.") : NULL, TRUE);
  /* The list may be scrolled far from them. */
  if (first == 0 || bad)
    gtk_widget_child_focus (GTK_WIDGET (first == 0 ? self->first : self->second), GTK_DIR_TAB_FORWARD);
  return first != 0 && !bad;
}

static gboolean
read_count (SteadCountDialog *self,
            SteadStore       *store)
{
  SteadDay day = STEAD_DAY_NONE;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &day);

  if (!good || self->count == NULL)
    return FALSE;
  for (guint i = 0; i < self->rows->len; i++)
    good &= stead_count_row_read (self->rows->pdata[i], self->count->lines->pdata[i]);
  self->count->day = day;
  self->count->person_id = stead_pick_get (self->first);
  self->count->second_id = stead_pick_get (self->second);
  g_free (self->count->note);
  self->count->note = stead_field_is_empty (self->note) ? NULL : g_strdup (stead_field_get_text (self->note));
  good &= check_people (self);
  return good && stead_cash_picks_check_day (self->day, store, day);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadStockCount *count = data;

  stead_store_watch_id (store, &count->id);
  return stead_count_repo_save (store, count, error);
}

static gboolean
stead_count_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadCountDialog *self = STEAD_COUNT_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);

  return read_count (self, stead_desk_get_store (desk)) &&
         stead_desk_act (desk, _("count of the store room"), save_act, self->count, error);
}

/* --- showing ------------------------------------------------------------------------------------ */

static void
stead_count_dialog_dispose (GObject *object)
{
  SteadCountDialog *self = STEAD_COUNT_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_COUNT_DIALOG);
  g_clear_pointer (&self->count, stead_stock_count_free);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_count_dialog_parent_class)->dispose (object);
}

static void
stead_count_dialog_class_init (SteadCountDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_count_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_count_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-count-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, list);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, grid);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, sum);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, place);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, first);
  gtk_widget_class_bind_template_child (widget_class, SteadCountDialog, second);
  gtk_widget_class_bind_template_callback (widget_class, show_sheet);
}

static void
stead_count_dialog_init (SteadCountDialog *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHYS_ROW, 2, 1);
  g_signal_connect_swapped (self->day, "changed", G_CALLBACK (show_sheet), self);
}

static void
fill_places (SteadCountDialog *self,
             SteadStore       *store)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, NULL);

  stead_pick_append (self->place, STEAD_COUNT_EVERYWHERE, _("Everywhere"));
  for (guint i = 0; places != NULL && i < places->len; i++)
    stead_pick_append (self->place, ((SteadPlaceFacts *) places->pdata[i])->id, ((SteadPlaceFacts *) places->pdata[i])->name);
  stead_pick_append (self->place, 0, _("What has no place"));
  stead_pick_show (self->place, STEAD_COUNT_EVERYWHERE);
}

void
stead_count_dialog_show (GtkWidget *parent,
                         SteadDesk *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadCountDialog *self = g_object_new (STEAD_TYPE_COUNT_DIALOG, "title", _("Count the store room"), NULL);

  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
  fill_places (self, store);
  stead_cash_picks_people (self->first, store, 0);
  stead_cash_picks_people (self->second, store, 0);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  show_sheet (self);
}
