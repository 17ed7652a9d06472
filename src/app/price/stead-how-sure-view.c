/* stead-how-sure-view.c - thousands of seasons out of ranges: how sure is it that they pay?
 *
 * Each range opens to three handles.  Nothing is kept, "Reset to the log" reads them anew.
 */
#include "config.h"

#include "app/price/stead-how-sure-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-how-sure-answer.h"
#include "app/price/stead-more-seasons.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "paper/stead-price-figure.h"

#define MOST_DAYS 40

struct _SteadHowSureView
{
  SteadView      parent_instance;

  SteadHowSure  *answer;      /* (nullable) */
  GtkWidget     *ranges;      /* an expander each */
  SteadHandle   *days, *together, *target;
  SteadMoreSeasons *seasons;
  SteadPlot     *spread, *bars;
  SteadWhyBox   *whys;
};

G_DEFINE_FINAL_TYPE (SteadHowSureView, stead_how_sure_view, STEAD_TYPE_VIEW)

/* One of the three handles of a range. */
typedef struct
{
  SteadHowSureView *view;
  SteadRange       *range;
  GtkWidget        *expander;
  int               end;       /* 0: lowest, 1: likeliest, 2: highest */
} End;

static char *
money (SteadHowSureView *self,
       double            cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->currency);
}

/* --- showing ------------------------------------------------------------------------------- */

static GPtrArray *
spread_rows (SteadHowSureView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; self->answer->solved && i < self->answer->n_bins; i++)
    {
      double from = self->answer->low + self->answer->step * i;
      char **row = g_new0 (char *, 4);

      row[0] = money (self, from);
      row[1] = money (self, from + self->answer->step);
      row[2] = stead_words_percent ((double) self->answer->counts[i] / self->answer->n_draws, 1);
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static GPtrArray *
range_rows (SteadHowSureView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->answer->ranges->len; i++)
    {
      const SteadRange *range = self->answer->ranges->pdata[i];
      char **row = g_new0 (char *, 7);

      row[0] = g_strdup (range->name);
      row[1] = stead_range_text (self->answer, range, range->value.low);
      row[2] = money (self, range->low_cents);
      row[3] = stead_range_text (self->answer, range, range->value.high);
      row[4] = money (self, range->high_cents);
      row[5] = money (self, fabs (range->high_cents - range->low_cents));
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static void
show (SteadHowSureView *self)
{
  g_autoptr(GPtrArray) whys = stead_how_sure_whys (self->answer);

  stead_view_say (STEAD_VIEW (self), self->answer->sentence, self->answer->advice);
  stead_plot_take_figure (self->spread, stead_spread_figure_new (self->answer));
  stead_plot_show (self->spread, self->answer->sentence, self->answer->currency, spread_rows (self));
  stead_plot_take_figure (self->bars, stead_range_figure_new (self->answer));
  stead_plot_show (self->bars, self->answer->advice, self->answer->currency, range_rows (self));
  stead_why_box_set (self->whys, whys);
}

/* Of other ranges, with so many seasons as can be drawn within a frame. */
static void
settle (SteadHowSureView *self)
{
  stead_how_sure_settle (self->answer);
  stead_more_seasons_show (self->seasons, self->answer);
  show (self);
}

/* "Eggs sold on a day: 39 dozen to 57 dozen" */
static void
show_range (GtkWidget          *expander,
            const SteadHowSure *answer,
            const SteadRange   *range)
{
  g_autofree char *low = stead_range_text (answer, range, range->value.low);
  g_autofree char *high = stead_range_text (answer, range, range->value.high);
  /* Translators: a range, its lowest and its highest value. */
  g_autofree char *text = g_strdup_printf (C_("range", "%s: %s to %s"), range->name, low, high);
  GtkWidget *label = gtk_expander_get_label_widget (GTK_EXPANDER (expander));

  gtk_label_set_text (GTK_LABEL (label), text);
  stead_ui_name (expander, text);
}

/* --- handles --------------------------------------------------------------------------------- */

static double *
value_of (const End *end)
{
  return end->end == 0 ? &end->range->value.low : end->end == 1 ? &end->range->value.likely : &end->range->value.high;
}

static char *
end_text (double   value,
          gpointer data)
{
  const End *end = data;

  return end->view->answer != NULL ? stead_range_text (end->view->answer, end->range, value) : g_strdup ("");
}

static void
end_cb (SteadHandle *handle,
        double       value,
        gpointer     data)
{
  const End *end = data;

  if (end->view->answer == NULL)
    return;
  *value_of (end) = value;
  show_range (end->expander, end->view->answer, end->range);
  settle (end->view);
}

static GtkWidget *
make_end (SteadHowSureView *self,
          SteadRange       *range,
          GtkWidget        *expander,
          int               at)
{
  const char *names[] = { C_("of a range", "lowest"), C_("of a range", "likeliest"), C_("of a range", "highest") };
  End *end = g_new (End, 1);
  g_autofree char *name = NULL;
  double low, high, step;
  GtkWidget *handle;

  *end = (End) { self, range, expander, at };
  /* Translators: a product, what is turned: "Eggs: price as it comes". */
  name = g_strdup_printf (C_("handle", "%s: %s"), range->name, names[at]);
  handle = stead_handle_new (name, end_text, end);
  g_object_set_data_full (G_OBJECT (handle), "end", end, g_free);
  stead_range_ends (range, &low, &high, &step);
  stead_handle_range (STEAD_HANDLE (handle), low, high, step);
  stead_handle_set (STEAD_HANDLE (handle), *value_of (end));
  g_signal_connect (handle, "turned", G_CALLBACK (end_cb), end);
  return handle;
}

static GtkWidget *
make_range (SteadHowSureView *self,
            SteadRange       *range)
{
  GtkWidget *expander = gtk_expander_new (NULL), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_expander_set_label_widget (GTK_EXPANDER (expander), label);
  /* Translators: says where a range is from: "as sold on 11 days", "the forecast in Raise". */
  gtk_box_append (GTK_BOX (box), stead_view_note (range->from));
  for (int at = 0; at < 3; at++)
    gtk_box_append (GTK_BOX (box), make_end (self, range, expander, at));
  stead_ui_expander_set_child (expander, box);
  show_range (expander, self->answer, range);
  return expander;
}

static void
fill_handles (SteadHowSureView *self)
{
  stead_view_clear (self->ranges);
  for (guint i = 0; i < self->answer->ranges->len; i++)
    gtk_box_append (GTK_BOX (self->ranges), make_range (self, self->answer->ranges->pdata[i]));
  stead_handle_range (self->days, 1, MOST_DAYS, 1);
  stead_handle_set (self->days, self->answer->n_days);
  stead_handle_range (self->together, 0, 100, 5);
  stead_handle_set (self->together, self->answer->together * 100);
  stead_handle_range (self->target, 0, MAX (ceil (self->answer->target_cents * 3 / 1000) * 1000, 100000), 1000);
  stead_handle_set (self->target, self->answer->target_cents);
}

static char *
days_text (double   value,
           gpointer data)
{
  return stead_words_days (llround (value));
}

static char *
share_text (double   value,
            gpointer data)
{
  return stead_words_percent (value / 100, 0);
}

static char *
cents_text (double   value,
            gpointer data)
{
  SteadHowSureView *self = data;

  return self->answer != NULL ? money (self, value) : g_strdup ("");
}

static void
turned_cb (SteadHowSureView *self)
{
  if (self->answer == NULL)
    return;
  self->answer->n_days = (int) lround (stead_handle_get (self->days));
  self->answer->together = stead_handle_get (self->together) / 100;
  self->answer->target_cents = stead_handle_get (self->target);
  settle (self);
}

/* --- reading ----------------------------------------------------------------------------------- */

static void
clear (SteadHowSureView *self)
{
  stead_more_seasons_show (self->seasons, NULL);
  stead_view_clear (self->ranges);
  stead_plot_take_figure (self->spread, NULL);
  stead_plot_take_figure (self->bars, NULL);
  g_clear_pointer (&self->answer, stead_how_sure_free);
}

static void
load (SteadHowSureView *self,
      SteadStore       *store)
{
  g_autoptr(GError) error = NULL;

  clear (self);
  self->answer = stead_how_sure_new (store, stead_desk_get_period (stead_view_get_desk (STEAD_VIEW (self))), &error);
  if (self->answer != NULL)
    stead_view_leave_out (STEAD_VIEW (self), self->answer->missing);
  if (self->answer == NULL || self->answer->n_products == 0)
    {
      stead_view_miss (STEAD_VIEW (self), error != NULL ? error->message
                       : _("Here all products of a sale day stand together. Give at least one of them a batch, a price "
                           "and a number planned."));
      clear (self);
      return;
    }
  fill_handles (self);
  stead_more_seasons_show (self->seasons, self->answer);
  show (self);
}

static void
stead_how_sure_view_refresh (SteadView  *view,
                             SteadStore *store,
                             gint64      product_id)
{
  load (STEAD_HOW_SURE_VIEW (view), store);
}

static void
reset_cb (SteadHowSureView *self)
{
  load (self, stead_desk_get_store (stead_view_get_desk (STEAD_VIEW (self))));
}

/* --- widget -------------------------------------------------------------------------------------- */

static void
stead_how_sure_view_finalize (GObject *object)
{
  SteadHowSureView *self = STEAD_HOW_SURE_VIEW (object);

  g_clear_pointer (&self->answer, stead_how_sure_free);
  G_OBJECT_CLASS (stead_how_sure_view_parent_class)->finalize (object);
}

static void
stead_how_sure_view_class_init (SteadHowSureViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_how_sure_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_how_sure_view_refresh;
}

static SteadHandle *
add_handle (SteadHowSureView *self,
            GtkWidget        *card,
            const char       *name,
            SteadHandleText   text)
{
  GtkWidget *handle = stead_handle_new (name, text, self);

  g_signal_connect_swapped (handle, "turned", G_CALLBACK (turned_cb), self);
  gtk_box_append (GTK_BOX (card), handle);
  return STEAD_HANDLE (handle);
}

static void
add_left (SteadHowSureView *self)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *reset;

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_view_heading (_("The season")));
  self->days = add_handle (self, card, _("Sale days"), days_text);
  self->target = add_handle (self, card, _("Profit wanted of the season"), cents_text);
  self->together = add_handle (self, card, _("Seasons that are good or bad for all"), share_text);
  self->seasons = STEAD_MORE_SEASONS (stead_more_seasons_new ());
  g_signal_connect_swapped (self->seasons, "drawn", G_CALLBACK (show), self);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->seasons));
  gtk_box_append (GTK_BOX (card), stead_view_heading (_("What is not sure")));
  self->ranges = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_box_append (GTK_BOX (card), self->ranges);
  reset = gtk_button_new_with_label (_("Reset to the log"));
  g_signal_connect_swapped (reset, "clicked", G_CALLBACK (reset_cb), self);
  gtk_box_append (GTK_BOX (card), reset);
  stead_view_add_left (STEAD_VIEW (self), card);
}

static void
stead_how_sure_view_init (SteadHowSureView *self)
{
  const char *spread[] = { _("From"), _("To"), _("Seasons"), NULL };
  const char *bars[] = { _("What changes"), _("Down to"), _("Then left"), _("Up to"), _("Then left"), _("Apart"), NULL };

  add_left (self);
  self->spread = STEAD_PLOT (stead_plot_new (_("How the season may end"), _("How often each result comes"), spread));
  stead_plot_set_height (self->spread, 270);
  stead_view_add_page (STEAD_VIEW (self), self->spread, "how-sure", NULL);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->spread));
  self->bars = STEAD_PLOT (stead_plot_new (_("Which range matters most"), _("Profit of the season at both ends of a range"),
                                           bars));
  stead_plot_set_height (self->bars, 270);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->bars));
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_how_sure_view_new (void)
{
  return g_object_new (STEAD_TYPE_HOW_SURE_VIEW, NULL);
}
