/* stead-counts-window.c - what was counted in the store room, and what differed, lot by lot. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-counts-window.h"

#include "answer/stead-store-room-why.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-count-repo.h"
#include "store/stead-farm-repo.h"

#define STEAD_TYPE_COUNTS_WINDOW (stead_counts_window_get_type ())
G_DECLARE_FINAL_TYPE (SteadCountsWindow, stead_counts_window, STEAD, COUNTS_WINDOW, GtkWindow)

struct _SteadCountsWindow
{
  GtkWindow    parent_instance;

  SteadDesk   *desk;
  GPtrArray   *counts;    /* of SteadStockCount, newest first */
  GtkLabel    *sum;
  GtkBox      *slot;
  SteadTable  *table;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadCountsWindow, stead_counts_window, GTK_TYPE_WINDOW)

/* One lot of one count. */
typedef struct
{
  const SteadStockCount *count;
  const SteadCountLine  *line;
} Counted;

static const Counted *
counted_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

/* --- cells --------------------------------------------------------------------------- */

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (counted_of (item)->count->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
item_text (gpointer item,
           gpointer data)
{
  return g_strdup (counted_of (item)->line->item_name);
}

static char *
code_text (gpointer item,
           gpointer data)
{
  return g_strdup (counted_of (item)->line->lot_code);
}

static char *
expected_text (gpointer item,
               gpointer data)
{
  const SteadCountLine *line = counted_of (item)->line;

  return stead_quantity_format (line->expected_base, line->unit);
}

static char *
counted_text (gpointer item,
              gpointer data)
{
  const SteadCountLine *line = counted_of (item)->line;

  return stead_quantity_format (line->counted_base, line->unit);
}

static char *
cost_text (gpointer item,
           gpointer data)
{
  const SteadCountLine *line = counted_of (item)->line;
  const char *currency = stead_desk_get_farm (STEAD_COUNTS_WINDOW (data)->desk)->currency;

  return line->movement_id != 0 ? stead_money_format (line->cents, currency) : g_strdup ("");
}

static char *
reason_text (gpointer item,
             gpointer data)
{
  const SteadCountLine *line = counted_of (item)->line;

  return g_strdup (line->movement_id == 0 ? _("as on record") : line->reason != NULL ? line->reason : "");
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = counted_of (a)->count->day, y = counted_of (b)->count->day;

  return (x > y) - (x < y);
}

static int
compare_item (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return g_utf8_collate (counted_of (a)->line->item_name, counted_of (b)->line->item_name);
}

/* --- the sentence ---------------------------------------------------------------------- */

static char *
person_name (SteadStore *store,
             gint64      id)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    if (((const SteadPerson *) people->pdata[i])->id == id)
      return g_strdup (((const SteadPerson *) people->pdata[i])->name);
  return g_strdup (_("somebody"));
}

static char *
sentence_of (SteadStore *store,
             GPtrArray  *counts)
{
  const SteadStockCount *last;
  g_autofree char *day = NULL, *first = NULL, *second = NULL;
  guint differ = 0;

  if (counts->len == 0)
    return g_strdup (_("The store room was not counted yet."));
  last = counts->pdata[0];
  for (guint i = 0; i < last->lines->len; i++)
    differ += ((const SteadCountLine *) last->lines->pdata[i])->movement_id != 0;
  day = stead_day_format (last->day, STEAD_DAY_STYLE_MEDIUM);
  first = person_name (store, last->person_id);
  second = person_name (store, last->second_id);
  /* Translators: a day, two people, the number of lots, and how many of them differed. */
  return g_strdup_printf (ngettext ("Last counted on %s by %s and %s: %u lot, of which %u differed from the record.",
                                    "Last counted on %s by %s and %s: %u lots, of which %u differed from the record.",
                                    last->lines->len), day, first, second, last->lines->len, differ);
}

/* --- the window ---------------------------------------------------------------------------- */

static void
close_cb (SteadCountsWindow *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
stead_counts_window_dispose (GObject *object)
{
  SteadCountsWindow *self = STEAD_COUNTS_WINDOW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_COUNTS_WINDOW);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->counts, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_counts_window_parent_class)->dispose (object);
}

static void
stead_counts_window_class_init (SteadCountsWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_counts_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-counts-window.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadCountsWindow, sum);
  gtk_widget_class_bind_template_child (widget_class, SteadCountsWindow, slot);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_counts_window_init (SteadCountsWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->table = STEAD_TABLE (stead_table_new (_("Past counts")));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, _("Item"), FALSE, FALSE, item_text, NULL, compare_item, self);
  stead_table_add_column (self->table, _("Lot"), FALSE, FALSE, code_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("On record"), TRUE, FALSE, expected_text, NULL, NULL, self);
  stead_table_add_column (self->table, C_("store room", "Counted"), TRUE, FALSE, counted_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, cost_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Why"), FALSE, TRUE, reason_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("What two people counted stands here, lot by lot. Start with “Count the store room…”."));
  gtk_widget_insert_after (stead_why_box_new_low (&self->whys), gtk_widget_get_parent (GTK_WIDGET (self->sum)),
                           GTK_WIDGET (self->sum));
  gtk_widget_set_hexpand (GTK_WIDGET (self->table), TRUE);
  gtk_box_append (self->slot, GTK_WIDGET (self->table));
}

static void
show_counts (SteadCountsWindow *self)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;
  g_autofree char *text = sentence_of (stead_desk_get_store (self->desk), self->counts);
  g_autoptr(GPtrArray) whys = NULL;

  for (guint i = 0; i < self->counts->len; i++)
    {
      const SteadStockCount *count = self->counts->pdata[i];

      for (guint j = 0; j < count->lines->len; j++)
        {
          const Counted counted = { count, count->lines->pdata[j] };

          g_ptr_array_add (rows, g_memdup2 (&counted, sizeof counted));
        }
    }
  model = stead_rows_from_array (g_steal_pointer (&rows), g_free);
  stead_table_set_model (self->table, model);
  gtk_label_set_text (self->sum, text);
  whys = stead_counts_whys (self->counts, stead_desk_get_farm (self->desk)->currency);
  stead_why_box_set (self->whys, whys);
}

void
stead_counts_window_show (GtkWidget *parent,
                          SteadDesk *desk)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) counts = NULL;
  SteadCountsWindow *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  counts = stead_count_repo_list (stead_desk_get_store (desk), &error);
  if (counts == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_COUNTS_WINDOW, "title", _("Past counts of the store room"), NULL);
  self->desk = g_object_ref (desk);
  self->counts = g_steal_pointer (&counts);
  show_counts (self);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  gtk_window_present (GTK_WINDOW (self));
}
