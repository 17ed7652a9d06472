/* stead-price-history.c - "How the price changed": steps over time, and a small table. */
#include "config.h"

#include "app/price/stead-price-history.h"

#include <glib/gi18n-lib.h>

#include "app/stead-chart-area.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "draw/stead-price-history-chart.h"

#define CHART_HEIGHT 170
#define TABLE_HEIGHT 150

struct _SteadPriceHistoryView
{
  GtkWidget        parent_instance;

  GtkWidget       *box;
  GtkWidget       *none;
  SteadChartArea  *chart;
  GtkWidget       *table;

  GArray          *days;       /* of SteadDay */
  GArray          *cents;      /* of gint64 */
  SteadDay         today;
  gint64           cost_cents;
  char            *cost_words;
  char            *currency;
};

G_DEFINE_FINAL_TYPE (SteadPriceHistoryView, stead_price_history, GTK_TYPE_WIDGET)

static SteadPriceHistory
get_history (SteadPriceHistoryView *self)
{
  return (SteadPriceHistory) {
    .days = (const SteadDay *) (gpointer) self->days->data,
    .cents = (const gint64 *) (gpointer) self->cents->data,
    .n = self->days->len,
    .today = self->today,
    .cost_cents = self->cost_cents,
  };
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadPriceHistoryView *self = data;
  SteadPriceHistory history = get_history (self);
  SteadPriceHistoryWords words = { .cost = self->cost_words };
  SteadPriceHistoryLayout layout;

  if (history.n == 0)
    return;
  stead_price_history_chart_layout (cr, &history, &words, style, width, height, &layout);
  stead_price_history_chart_paint (cr, &history, &words, style, &layout);
}

/* "$4.50 from Sep 1, 2026": one change in words. */
static char *
change_text (SteadPriceHistoryView *self,
             guint                  i)
{
  g_autofree char *money = stead_money_format (g_array_index (self->cents, gint64, i), self->currency);
  g_autofree char *day = stead_day_format (g_array_index (self->days, SteadDay, i), STEAD_DAY_STYLE_MEDIUM);

  /* Translators: a price and the day since which it is asked: "$4.50 from Sep 1, 2026". */
  return g_strdup_printf (_("%s from %s"), money, day);
}

/* The layout that the chart was last painted with, to find a place on it. */
static void
lay (SteadPriceHistoryView   *self,
     SteadPriceHistoryLayout *out)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1, 1);
  cairo_t *cr = cairo_create (surface);
  SteadPriceHistory history = get_history (self);
  SteadPriceHistoryWords words = { .cost = self->cost_words };
  SteadDrawStyle style;

  stead_chart_area_get_style (self->chart, NULL, &style);
  stead_price_history_chart_layout (cr, &history, &words, &style, gtk_widget_get_width (GTK_WIDGET (self->chart)),
                                    gtk_widget_get_height (GTK_WIDGET (self->chart)), out);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadPriceHistoryView *self = data;
  SteadPriceHistoryLayout layout;
  int found = -1;

  if (self->days->len == 0)
    return NULL;
  lay (self, &layout);
  for (guint i = 0; i < self->days->len; i++)
    if (stead_price_history_chart_x (&layout, g_array_index (self->days, SteadDay, i)) <= x)
      found = (int) i;
  return found < 0 || x > layout.plot.x + layout.plot.width ? NULL : change_text (self, (guint) found);
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadPriceHistoryView *self = data;
  SteadPriceHistoryLayout layout;

  if (index >= (int) self->days->len)
    return NULL;
  lay (self, &layout);
  *x = stead_price_history_chart_x (&layout, g_array_index (self->days, SteadDay, index));
  *y = stead_price_history_chart_y (&layout, (double) g_array_index (self->cents, gint64, index));
  return change_text (self, (guint) index);
}

/* Table ------------------------------------------------------------------------------ */

static const SteadPrice *
price_of (gconstpointer item)
{
  return stead_row_get (STEAD_ROW ((gpointer) item));
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (price_of (item)->from_day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
money_text (gpointer item,
            gpointer data)
{
  return stead_money_format (price_of (item)->cents, ((SteadPriceHistoryView *) data)->currency);
}

static char *
note_text (gpointer item,
           gpointer data)
{
  return g_strdup (price_of (item)->note != NULL ? price_of (item)->note : "");
}

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return (price_of (a)->from_day > price_of (b)->from_day) - (price_of (a)->from_day < price_of (b)->from_day);
}

static int
compare_cents (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  return (price_of (a)->cents > price_of (b)->cents) - (price_of (a)->cents < price_of (b)->cents);
}

static SteadPrice *
price_copy (const SteadPrice *price)
{
  SteadPrice *copy = g_new (SteadPrice, 1);

  *copy = *price;
  copy->note = g_strdup (price->note);
  return copy;
}

/* Newest first: the present price is what one looks for. */
static void
fill_table (SteadPriceHistoryView *self,
            GPtrArray             *prices)
{
  GPtrArray *facts = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  for (guint i = prices->len; i > 0; i--)
    g_ptr_array_add (facts, price_copy (prices->pdata[i - 1]));
  model = stead_rows_from_array (facts, (GDestroyNotify) stead_price_free);
  stead_table_set_model (STEAD_TABLE (self->table), model);
}

/* Widget --------------------------------------------------------------------------------- */

static void
stead_price_history_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_price_history_parent_class)->dispose (object);
}

static void
stead_price_history_finalize (GObject *object)
{
  SteadPriceHistoryView *self = STEAD_PRICE_HISTORY (object);

  g_array_unref (self->days);
  g_array_unref (self->cents);
  g_free (self->cost_words);
  g_free (self->currency);
  G_OBJECT_CLASS (stead_price_history_parent_class)->finalize (object);
}

static void
stead_price_history_class_init (SteadPriceHistoryViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_price_history_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_price_history_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
make_table (SteadPriceHistoryView *self)
{
  SteadTable *table;

  self->table = stead_table_new (_("Prices, newest first"));
  table = STEAD_TABLE (self->table);
  stead_table_add_column (table, C_("column of prices", "From"), FALSE, FALSE, day_text, NULL, compare_days, self);
  stead_table_add_column (table, _("Price"), TRUE, FALSE, money_text, NULL, compare_cents, self);
  stead_table_add_column (table, _("Why"), FALSE, TRUE, note_text, NULL, NULL, self);
  gtk_widget_set_size_request (self->table, -1, TABLE_HEIGHT);
}

static void
stead_price_history_init (SteadPriceHistoryView *self)
{
  self->days = g_array_new (FALSE, FALSE, sizeof (SteadDay));
  self->cents = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->currency = g_strdup ("USD");
  self->chart = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->chart, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->chart, step_cb);
  stead_chart_area_set_file_name (self->chart, _("price-history"));
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1, CHART_HEIGHT);
  self->none = gtk_label_new (_("No price is in use yet. Turn the price to where it should be, "
                                "then press “Use … from today”."));
  gtk_label_set_wrap (GTK_LABEL (self->none), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->none), 0);
  gtk_widget_add_css_class (self->none, "soft");
  make_table (self);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (self->box), self->none);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->chart));
  gtk_box_append (GTK_BOX (self->box), self->table);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_price_history_new (void)
{
  return g_object_new (STEAD_TYPE_PRICE_HISTORY, NULL);
}

static void
take_prices (SteadPriceHistoryView *self,
             GPtrArray             *prices)
{
  g_array_set_size (self->days, 0);
  g_array_set_size (self->cents, 0);
  for (guint i = 0; i < prices->len; i++)
    {
      const SteadPrice *price = prices->pdata[i];

      g_array_append_val (self->days, price->from_day);
      g_array_append_val (self->cents, price->cents);
    }
}

static void
describe (SteadPriceHistoryView *self)
{
  g_autofree char *last = self->days->len > 0 ? change_text (self, self->days->len - 1) : NULL;
  g_autofree char *sentence = NULL;

  if (last != NULL)
    /* Translators: number of prices so far, the latest price and its day. */
    sentence = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u price so far; the latest is %s.",
                                             "%u prices so far; the latest is %s.", self->days->len),
                                self->days->len, last);
  stead_chart_area_describe (self->chart, _("How the price changed"), sentence);
}

void
stead_price_history_set (SteadPriceHistoryView  *self,
                         const SteadPriceAnswer *answer,
                         SteadDay                today)
{
  g_autofree char *cost = NULL;

  g_return_if_fail (STEAD_IS_PRICE_HISTORY (self));

  if (answer == NULL)
    return;
  g_free (self->currency);
  g_free (self->cost_words);
  self->currency = g_strdup (answer->cost->farm->currency);
  self->today = today;
  self->cost_cents = answer->cost->sheet.unit_cents;
  cost = stead_money_format (self->cost_cents, self->currency);
  /* Translators: beside a line in the chart of prices: "costs $2.41 now". */
  self->cost_words = g_strdup_printf (_("costs %s now"), cost);
  take_prices (self, answer->prices);
  fill_table (self, answer->prices);
  stead_chart_area_set_currency (self->chart, self->currency);
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self->chart));
  gtk_widget_set_visible (self->none, answer->prices->len == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->chart), answer->prices->len > 0);
  gtk_widget_set_visible (self->table, answer->prices->len > 0);
}
