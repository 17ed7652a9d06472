/* stead-trace-window.c - where a lot came from and where it went: the picture and the amounts.
 *
 * The picture is scrolled, so that each card has room at the full size of the text.
 * A row of the table opens its lot; whatever changes there is shown here at once.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-trace-window.h"

#include "answer/stead-trace-answer.h"
#include "app/keep/stead-lot-dialog.h"
#include "app/stead-chart-area.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "draw/stead-trace-chart.h"

#define COLUMN_WIDTH 12.5     /* the least of a card and the gap beside it, in heights of the text */
#define CHART_WIDTH 920       /* what the window has room for as it opens */

struct _SteadTraceWindow
{
  GtkWindow          parent_instance;

  SteadDesk         *desk;
  gint64             lot_id;
  SteadTraceAnswer  *answer;    /* (nullable): could not be read */
  SteadTraceLayout   layout;    /* as it was painted last; no cards before that */

  GtkLabel          *sentence;
  GtkLabel          *caution;
  GtkScrolledWindow *scroll;
  SteadChartArea    *chart;
  SteadTable        *table;
  SteadWhyBox       *whys;
};

G_DEFINE_FINAL_TYPE (SteadTraceWindow, stead_trace_window, GTK_TYPE_WINDOW)

/* --- the picture ------------------------------------------------------------------------- */

static void
forget_layout (SteadTraceWindow *self)
{
  stead_trace_layout_clear (&self->layout);
  self->layout = (SteadTraceLayout) { 0 };
}

/* Only what stands in the window is kept: a picture to save has places of its own. */
static void
paint_chart (cairo_t              *cr,
             const SteadDrawStyle *style,
             double                width,
             double                height,
             gpointer              data)
{
  SteadTraceWindow *self = data;
  g_auto(SteadTraceLayout) layout = { 0 };
  GtkWidget *chart = GTK_WIDGET (self->chart);

  if (self->answer == NULL)
    return;
  stead_trace_chart_layout (cr, self->answer->flow, style, width, height, &layout);
  stead_trace_chart_paint (cr, self->answer->flow, style, &layout);
  if ((int) width != gtk_widget_get_width (chart) || (int) height != gtk_widget_get_height (chart))
    return;
  forget_layout (self);
  self->layout = layout;
  layout = (SteadTraceLayout) { 0 };
}

/* (transfer full): what the card says */
static char *
card_text (SteadTraceWindow *self,
           guint             at)
{
  const SteadFlowNode *node = &g_array_index (self->answer->flow->nodes, SteadFlowNode, at);
  GString *text = g_string_new (node->title);

  if (node->detail != NULL)
    g_string_append_printf (text, "\n%s", node->detail);
  if (node->state != NULL)
    g_string_append_printf (text, "\n%s", node->state);
  return g_string_free (text, FALSE);
}

static char *
chart_hint (double   x,
            double   y,
            gpointer data)
{
  SteadTraceWindow *self = data;
  int at;

  if (self->answer == NULL || self->layout.cards == NULL)
    return NULL;
  at = stead_trace_chart_at (&self->layout, x, y);
  return at < 0 ? NULL : card_text (self, (guint) at);
}

static void
scroll_to (SteadTraceWindow *self,
           const SteadBox   *box)
{
  gtk_adjustment_clamp_page (gtk_scrolled_window_get_hadjustment (self->scroll), box->x, box->x + box->width);
  gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (self->scroll), box->y, box->y + box->height);
}

/* Also a card that found no room is said: beside the place of the last one. */
static char *
chart_step (int      index,
            double  *x,
            double  *y,
            gpointer data)
{
  SteadTraceWindow *self = data;
  const SteadTraceCard *card;

  if (self->answer == NULL || self->layout.cards == NULL || index < 0 || (guint) index >= self->layout.n_cards)
    return NULL;
  card = &self->layout.cards[index];
  if (card->is_drawn)
    {
      *x = card->card.x + card->card.width / 2;
      *y = card->card.y + card->card.height / 2;
      scroll_to (self, &card->card);
    }
  return card_text (self, (guint) index);
}

/* As high as it takes for each card to show all its text. */
static void
size_chart (SteadTraceWindow *self)
{
  SteadDrawStyle style;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double least, height;

  stead_chart_area_get_style (self->chart, NULL, &style);
  least = self->answer->flow->n_columns * COLUMN_WIDTH * style.font_size;
  height = stead_trace_chart_height (cr, self->answer->flow, &style, MAX (least, CHART_WIDTH));
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), (int) ceil (least), (int) ceil (height));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
show_chart (SteadTraceWindow *self)
{
  const SteadTraceLot *lot = self->answer->lot;
  g_autofree char *plain = stead_words_plain (self->answer->sentence);
  /* Translators: name of a file: the code of a lot */
  g_autofree char *file = g_strdup_printf (_("Trace of lot %s"), lot->code);

  stead_chart_area_describe (self->chart, _("Chart of where the lot came from and went"), plain);
  stead_chart_area_set_file_name (self->chart, file);
  size_chart (self);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
}

/* --- the amounts ------------------------------------------------------------------------- */

/* What a count found came in, what it missed is lost, so that each row adds up. */

static const SteadTraceLot *
lot_of (gpointer item)
{
  return ((const SteadTraceRow *) stead_row_get (item))->lot;
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (((const SteadTraceRow *) stead_row_get (item))->name);
}

static char *
from_text (gpointer item,
           gpointer data)
{
  return g_strdup (((const SteadTraceRow *) stead_row_get (item))->from);
}

static char *
in_text (gpointer item,
         gpointer data)
{
  const SteadTraceLot *lot = lot_of (item);

  return stead_trace_amount (lot->in_base + MAX (lot->found_base, 0), lot->unit);
}

static char *
used_text (gpointer item,
           gpointer data)
{
  return stead_trace_amount (lot_of (item)->used_base, lot_of (item)->unit);
}

static char *
out_text (gpointer item,
          gpointer data)
{
  const SteadTraceLot *lot = lot_of (item);

  return stead_trace_amount (lot->sold_base + lot->given_base, lot->unit);
}

static char *
lost_text (gpointer item,
           gpointer data)
{
  const SteadTraceLot *lot = lot_of (item);

  return stead_trace_amount (lot->lost_base - MIN (lot->found_base, 0), lot->unit);
}

static char *
left_text (gpointer item,
           gpointer data)
{
  return stead_trace_amount (lot_of (item)->left_base, lot_of (item)->unit);
}

static void
open_row (gpointer item,
          gpointer data)
{
  SteadTraceWindow *self = data;

  stead_lot_dialog_show (GTK_WIDGET (self), self->desk, lot_of (item)->id);
}

static void
open_cb (SteadTraceWindow *self)
{
  gpointer item = stead_table_get_selected (self->table);

  if (item != NULL)
    open_row (item, self);
}

static void
add_columns (SteadTraceWindow *self)
{
  SteadTable *table = self->table;

  stead_table_set_name (table, _("The lots of the trace, and where all of it is"));
  stead_table_add_column (table, C_("column of a trace", "Lot"), FALSE, TRUE, name_text, NULL, NULL, self);
  stead_table_add_column (table, C_("column of a trace", "In"), TRUE, FALSE, in_text, NULL, NULL, self);
  stead_table_add_column (table, C_("column of a trace", "Used"), TRUE, FALSE, used_text, NULL, NULL, self);
  stead_table_add_column (table, C_("column of a trace", "Sold or given"), TRUE, FALSE, out_text, NULL, NULL, self);
  stead_table_add_column (table, C_("column of a trace", "Lost"), TRUE, FALSE, lost_text, NULL, NULL, self);
  stead_table_add_column (table, C_("column of a trace", "Left"), TRUE, FALSE, left_text, NULL, NULL, self);
  stead_table_add_column (table, C_("column of a trace", "Came from"), FALSE, TRUE, from_text, NULL, NULL, self);
  stead_table_set_activate (table, open_row, self);
}

/* The rows belong to the answer, which lives until other rows are shown.  The lot
 * itself and what came of it stand first, as on paper. */
static GListModel *
rows_of (const SteadTraceAnswer *answer)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();

  for (guint i = 0; i < answer->ahead->len; i++)
    g_ptr_array_add (rows, answer->ahead->pdata[i]);
  for (guint i = 0; i < answer->back->len; i++)
    g_ptr_array_add (rows, answer->back->pdata[i]);
  return stead_rows_from_array (g_steal_pointer (&rows), NULL);
}

/* --- the window -------------------------------------------------------------------------- */

static void
take_answer (SteadTraceWindow *self,
             SteadTraceAnswer *answer)
{
  stead_table_set_model (self->table, NULL);
  forget_layout (self);
  g_clear_pointer (&self->answer, stead_trace_answer_free);
  self->answer = answer;
}

static void
show_answer (SteadTraceWindow *self)
{
  g_autoptr(GListModel) model = rows_of (self->answer);
  g_autoptr(GPtrArray) whys = stead_trace_answer_whys (self->answer);
  const char *caution = self->answer->caution;

  gtk_label_set_markup (self->sentence, self->answer->sentence);
  stead_ui_tell (self->caution, caution);
  show_chart (self);
  stead_table_set_model (self->table, model);
  stead_why_box_set (self->whys, whys);
}

/* (nullable): with @error */
static SteadTraceAnswer *
ask (SteadTraceWindow *self,
     GError          **error)
{
  return stead_trace_answer_new (stead_desk_get_store (self->desk), self->lot_id, error);
}

/* A lot that went while it was shown leaves its last picture for nothing to be opened from. */
static void
changed_cb (SteadTraceWindow *self)
{
  SteadTraceAnswer *answer;

  if (stead_desk_get_store (self->desk) == NULL)
    return;
  answer = ask (self, NULL);
  if (answer == NULL)
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }
  take_answer (self, answer);
  show_answer (self);
}

static void
print_cb (SteadTraceWindow *self)
{
  if (stead_desk_get_store (self->desk) == NULL)   /* the farm was closed under it */
    return;
  stead_paper_dialog_show (GTK_WIDGET (self), self->desk, "trace", self->answer->lot->code);
}

static void
stead_trace_window_dispose (GObject *object)
{
  SteadTraceWindow *self = STEAD_TRACE_WINDOW (object);

  if (self->table != NULL)
    take_answer (self, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_TRACE_WINDOW);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_trace_window_parent_class)->dispose (object);
}

static void
stead_trace_window_class_init (SteadTraceWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHART_AREA);
  g_type_ensure (STEAD_TYPE_TABLE);
  G_OBJECT_CLASS (klass)->dispose = stead_trace_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-trace-window.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadTraceWindow, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadTraceWindow, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadTraceWindow, scroll);
  gtk_widget_class_bind_template_child (widget_class, SteadTraceWindow, chart);
  gtk_widget_class_bind_template_child (widget_class, SteadTraceWindow, table);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
  gtk_widget_class_bind_template_callback (widget_class, print_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_trace_window_init (SteadTraceWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_chart_area_set_paint (self->chart, paint_chart, chart_hint, self);
  stead_chart_area_set_step (self->chart, chart_step);
  add_columns (self);
  gtk_widget_insert_after (stead_why_box_new_low (&self->whys), gtk_widget_get_parent (GTK_WIDGET (self->table)),
                           GTK_WIDGET (self->table));
}

void
stead_trace_window_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     lot_id)
{
  SteadTraceWindow *self = g_object_new (STEAD_TYPE_TRACE_WINDOW, NULL);
  g_autoptr(GError) error = NULL;
  g_autofree char *title = NULL;
  SteadTraceAnswer *answer;

  self->desk = g_object_ref (desk);
  self->lot_id = lot_id;
  answer = ask (self, &error);
  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      gtk_window_destroy (GTK_WINDOW (self));
      return;
    }
  take_answer (self, answer);
  /* Translators: the code of a lot */
  title = g_strdup_printf (_("Where lot %s came from and went"), answer->lot->code);
  gtk_window_set_title (GTK_WINDOW (self), title);
  g_signal_connect_object (desk, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  show_answer (self);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  gtk_window_present (GTK_WINDOW (self));
}
