/* stead-why-box.c - a list of disclosures, each worked with the farm's own numbers.
 *
 * Rows are told apart by their titles, so that what a student has opened stays
 * open while its numbers move under the handles.
 */
#include "config.h"

#include "app/stead-why-box.h"

#include <glib/gi18n-lib.h>

#include "app/stead-columns-layout.h"
#include "app/stead-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-text.h"

/* Of a page: what a formula and its numbers need to be read. */
#define MOST_COLUMNS 2
#define COLUMN_WIDTH 420

/* Of what leaves most of the page to what is asked about. */
#define LOW_HEIGHT 130

struct _SteadWhyBox
{
  GtkWidget  parent_instance;

  GPtrArray *rows;   /* of Row, in the order shown */
  gboolean   page;   /* a page of its own: each is open from the first on */
  GtkWidget *fold;   /* (nullable): what folds it away; seen while there is something to ask */
};

typedef struct
{
  char      *title;
  GtkWidget *expander;
  GtkWidget *text;
} Row;

G_DEFINE_FINAL_TYPE (SteadWhyBox, stead_why_box, GTK_TYPE_WIDGET)

static void
row_free (gpointer data)
{
  Row *row = data;

  gtk_widget_unparent (row->expander);
  g_free (row->title);
  g_free (row);
}

/* A dialog around it takes its height from what is seen. */
static void
fit_dialog (GtkWidget *expander)
{
  gtk_widget_activate_action (expander, STEAD_DIALOG_FIT, NULL);
}

static Row *
row_new (SteadWhyBox *self,
         const char  *title)
{
  Row *row = g_new0 (Row, 1);

  row->title = g_strdup (title);
  row->expander = gtk_expander_new (title);
  row->text = stead_why_text_new ();
  stead_ui_name (row->expander, title);
  stead_ui_expander_set_child (row->expander, row->text);
  gtk_expander_set_expanded (GTK_EXPANDER (row->expander), self->page);
  g_signal_connect (row->expander, "notify::expanded", G_CALLBACK (fit_dialog), NULL);
  gtk_widget_set_parent (row->expander, GTK_WIDGET (self));
  return row;
}

/* The row with this title is moved to @index, and made if there is none. */
static Row *
row_at (SteadWhyBox *self,
        guint        index,
        const char  *title)
{
  Row *row = NULL;

  for (guint i = index; i < self->rows->len && row == NULL; i++)
    if (g_strcmp0 (((Row *) self->rows->pdata[i])->title, title) == 0)
      row = g_ptr_array_steal_index (self->rows, i);
  if (row == NULL)
    row = row_new (self, title);
  g_ptr_array_insert (self->rows, (int) index, row);
  gtk_widget_insert_after (row->expander, GTK_WIDGET (self),
                           index > 0 ? ((Row *) self->rows->pdata[index - 1])->expander : NULL);
  return row;
}

static void
stead_why_box_dispose (GObject *object)
{
  SteadWhyBox *self = STEAD_WHY_BOX (object);

  g_clear_weak_pointer (&self->fold);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_why_box_parent_class)->dispose (object);
}

static void
stead_why_box_class_init (SteadWhyBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_why_box_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "whybox");
}

static void
stead_why_box_init (SteadWhyBox *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 3);
  self->rows = g_ptr_array_new_with_free_func (row_free);
}

GtkWidget *
stead_why_box_new (void)
{
  return g_object_new (STEAD_TYPE_WHY_BOX, NULL);
}

static GtkWidget *
fold_away (SteadWhyBox *self,
           GtkWidget   *child)
{
  GtkWidget *expander = gtk_expander_new (_("Why? The figures worked out"));

  stead_ui_name (expander, _("Why? The figures worked out"));
  stead_ui_expander_set_child (expander, child);
  g_signal_connect (expander, "notify::expanded", G_CALLBACK (fit_dialog), NULL);
  g_set_weak_pointer (&self->fold, expander);
  return expander;
}

GtkWidget *
stead_why_box_new_folded (SteadWhyBox **out_self)
{
  g_return_val_if_fail (out_self != NULL, NULL);

  *out_self = STEAD_WHY_BOX (stead_why_box_new ());
  return fold_away (*out_self, GTK_WIDGET (*out_self));
}

GtkWidget *
stead_why_box_new_low (SteadWhyBox **out_self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  g_return_val_if_fail (out_self != NULL, NULL);

  *out_self = STEAD_WHY_BOX (stead_why_box_new ());
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), LOW_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (*out_self));
  stead_ui_name (scroller, _("Why? The figures worked out"));
  return fold_away (*out_self, scroller);
}

void
stead_why_box_set_page (SteadWhyBox *self)
{
  g_return_if_fail (STEAD_IS_WHY_BOX (self) && self->rows->len == 0);

  self->page = TRUE;
  gtk_widget_set_layout_manager (GTK_WIDGET (self), stead_columns_layout_new (MOST_COLUMNS, COLUMN_WIDTH, FALSE));
}

void
stead_why_box_set (SteadWhyBox *self,
                   GPtrArray   *whys)
{
  guint n = 0;

  g_return_if_fail (STEAD_IS_WHY_BOX (self) && whys != NULL);

  for (guint i = 0; i < whys->len; i++)
    {
      const SteadWhy *why = whys->pdata[i];

      if (why != NULL)
        stead_why_text_set (STEAD_WHY_TEXT (row_at (self, n++, why->title)->text), why);
    }
  if (n < self->rows->len)
    g_ptr_array_remove_range (self->rows, n, self->rows->len - n);
  if (self->fold != NULL && gtk_widget_get_visible (self->fold) != (n > 0))
    {
      gtk_widget_set_visible (self->fold, n > 0);
      fit_dialog (self->fold);
    }
}

/* Once it is laid out, what was opened is brought into view. */
static gboolean
bring_into_view_cb (GtkWidget     *expander,
                    GdkFrameClock *clock,
                    gpointer       data)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (expander, GTK_TYPE_VIEWPORT);
  GtkAdjustment *adjustment;
  graphene_rect_t bounds;

  if (viewport == NULL || !gtk_widget_compute_bounds (expander, viewport, &bounds))
    return G_SOURCE_REMOVE;
  adjustment = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (viewport));
  gtk_adjustment_clamp_page (adjustment, gtk_adjustment_get_value (adjustment) + (double) bounds.origin.y,
                             gtk_adjustment_get_value (adjustment)
                             + (double) (bounds.origin.y + bounds.size.height));
  return g_get_monotonic_time () < *(gint64 *) data ? G_SOURCE_CONTINUE : G_SOURCE_REMOVE;
}

/* The heights around it settle within a few frames. */
static void
bring_into_view (GtkWidget *expander)
{
  gint64 until = g_get_monotonic_time () + G_TIME_SPAN_MILLISECOND * 200;

  gtk_widget_add_tick_callback (expander, bring_into_view_cb, g_memdup2 (&until, sizeof until), g_free);
}

gboolean
stead_why_box_open (SteadWhyBox *self,
                    const char  *title)
{
  g_return_val_if_fail (STEAD_IS_WHY_BOX (self), FALSE);

  for (guint i = 0; i < self->rows->len; i++)
    {
      Row *row = self->rows->pdata[i];

      if (g_strcmp0 (row->title, title) != 0)
        continue;
      gtk_expander_set_expanded (GTK_EXPANDER (row->expander), TRUE);
      gtk_widget_grab_focus (row->expander);
      bring_into_view (row->expander);
      return TRUE;
    }
  return FALSE;
}
