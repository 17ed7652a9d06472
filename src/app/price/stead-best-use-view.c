/* stead-best-use-view.c - the best use of eggs, fruit, jars and time that are scarce.
 *
 * What there is of each is a handle; the chart holds the best plan against the farm's.
 */
#include "config.h"

#include "app/price/stead-best-use-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/price/stead-best-use-handles.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "paper/stead-price-figure.h"

/* How long a handle rests before whole units are looked for with patience. */
#define REST_MS 300

struct _SteadBestUseView
{
  SteadView            parent_instance;

  SteadBestUse        *answer;    /* (nullable) */
  SteadBestUseHandles *handles;
  GtkWidget           *worth, *whole;
  SteadPlot           *plot;
  SteadWhyBox         *whys;
  guint                rest_id;
};

G_DEFINE_FINAL_TYPE (SteadBestUseView, stead_best_use_view, STEAD_TYPE_VIEW)

static const SteadBestUseLine *
line_at (SteadBestUseView *self,
         guint             i)
{
  return self->answer->lines->pdata[i];
}

static double
left_of (const SteadBestUseLine *line)
{
  return line->price_cents - line->own_cents;
}

/* --- showing ------------------------------------------------------------------------------- */

static char *
money (SteadBestUseView *self,
       double            cents)
{
  return stead_money_format (stead_money_round (cents), self->answer->currency);
}

static GPtrArray *
make_rows (SteadBestUseView *self)
{
  GPtrArray *rows = g_ptr_array_new ();

  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const SteadBestUseLine *line = line_at (self, i);
      char **row = g_new0 (char *, 9);

      row[0] = g_strdup (line->name);
      row[1] = money (self, left_of (line));
      row[2] = stead_words_units (line->pack, line->planned);
      row[3] = stead_words_units (line->pack, line->least);
      row[4] = stead_words_units (line->pack, line->most);
      row[5] = stead_words_units (line->pack, line->best);
      row[6] = money (self, line->best * left_of (line));
      row[7] = stead_best_use_prices (self->answer, line);
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static void
show (SteadBestUseView *self)
{
  g_autoptr(GPtrArray) whys = stead_best_use_whys (self->answer);

  stead_view_say (STEAD_VIEW (self), self->answer->sentence, self->answer->advice);
  gtk_label_set_markup (GTK_LABEL (self->worth), self->answer->scarce_text);
  stead_plot_take_figure (self->plot, stead_best_use_figure_new (self->answer));
  stead_plot_show (self->plot, self->answer->sentence, self->answer->currency, make_rows (self));
  stead_why_box_set (self->whys, whys);
}

static void
drop_rest (SteadBestUseView *self)
{
  if (self->rest_id != 0)
    g_source_remove (self->rest_id);
  self->rest_id = 0;
}

static gboolean
rest_cb (gpointer data)
{
  SteadBestUseView *self = data;

  self->rest_id = 0;
  stead_best_use_settle (self->answer, FALSE);
  show (self);
  return G_SOURCE_REMOVE;
}

/* A better plan than was found within the frame is looked for once the handle rests. */
static void
turned_cb (SteadBestUseView *self)
{
  if (self->answer == NULL)
    return;
  drop_rest (self);
  stead_best_use_settle (self->answer, TRUE);
  if (!self->answer->proven)
    self->rest_id = g_timeout_add (REST_MS, rest_cb, self);
  show (self);
}

static void
whole_cb (SteadBestUseView *self)
{
  if (self->answer == NULL)
    return;
  self->answer->whole = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->whole));
  turned_cb (self);
}

static void
clear (SteadBestUseView *self)
{
  drop_rest (self);
  stead_best_use_handles_show (self->handles, NULL);
  stead_plot_take_figure (self->plot, NULL);
  g_clear_pointer (&self->answer, stead_best_use_free);
}

static void
load (SteadBestUseView *self,
      SteadStore       *store)
{
  SteadPeriod period = stead_desk_get_period (stead_view_get_desk (STEAD_VIEW (self)));
  g_autoptr(GError) error = NULL;

  clear (self);
  self->answer = stead_best_use_new (store, period, &error);
  if (self->answer != NULL)
    stead_view_leave_out (STEAD_VIEW (self), self->answer->missing);
  if (self->answer == NULL || self->answer->lines->len == 0)
    {
      stead_view_miss (STEAD_VIEW (self), error != NULL ? error->message
                       : _("Here all products of a sale day stand together. Give at least one of them a batch, a price "
                           "and a number planned."));
      clear (self);
      return;
    }
  self->answer->whole = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->whole));
  stead_best_use_handles_show (self->handles, self->answer);
  stead_best_use_settle (self->answer, FALSE);
  show (self);
}

static void
stead_best_use_view_refresh (SteadView  *view,
                             SteadStore *store,
                             gint64      product_id)
{
  load (STEAD_BEST_USE_VIEW (view), store);
}

static void
reset_cb (SteadBestUseView *self)
{
  load (self, stead_desk_get_store (stead_view_get_desk (STEAD_VIEW (self))));
}

/* --- widget ----------------------------------------------------------------------------------- */

static void
stead_best_use_view_finalize (GObject *object)
{
  SteadBestUseView *self = STEAD_BEST_USE_VIEW (object);

  drop_rest (self);
  g_clear_pointer (&self->answer, stead_best_use_free);
  G_OBJECT_CLASS (stead_best_use_view_parent_class)->finalize (object);
}

static void
stead_best_use_view_class_init (SteadBestUseViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_best_use_view_finalize;
  STEAD_VIEW_CLASS (klass)->refresh = stead_best_use_view_refresh;
}

static void
stead_best_use_view_init (SteadBestUseView *self)
{
  const char *columns[] = { _("Product"), _("Left of one"), _("Planned"), _("At least"), _("At most"), _("Best use"),
                            _("Brings"), _("Same plan at prices"), NULL };
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *reset, *scarce;

  gtk_widget_add_css_class (card, "card");
  self->handles = STEAD_BEST_USE_HANDLES (stead_best_use_handles_new ());
  g_signal_connect_swapped (self->handles, "turned", G_CALLBACK (turned_cb), self);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->handles));
  self->whole = gtk_check_button_new_with_label (_("Only whole units"));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->whole), TRUE);
  g_signal_connect_swapped (self->whole, "toggled", G_CALLBACK (whole_cb), self);
  gtk_box_append (GTK_BOX (card), self->whole);
  reset = gtk_button_new_with_label (_("As the plan uses it"));
  g_signal_connect_swapped (reset, "clicked", G_CALLBACK (reset_cb), self);
  gtk_box_append (GTK_BOX (card), reset);
  stead_view_add_left (STEAD_VIEW (self), card);

  self->plot = STEAD_PLOT (stead_plot_new (_("What to make of it"), _("Best use, by product"), columns));
  stead_plot_set_height (self->plot, 230);
  stead_view_add_page (STEAD_VIEW (self), self->plot, "best-use", NULL);
  stead_view_add_right (STEAD_VIEW (self), GTK_WIDGET (self->plot));
  scarce = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (scarce, "card");
  gtk_box_append (GTK_BOX (scarce), stead_view_heading (_("What one more of it is worth")));
  self->worth = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->worth), 0);
  gtk_label_set_wrap (GTK_LABEL (self->worth), TRUE);
  gtk_box_append (GTK_BOX (scarce), self->worth);
  gtk_box_append (GTK_BOX (scarce), stead_view_note (_("Feed, and work that nobody is paid for, are spent either way. So what counts here is "
                                                       "the price less what is bought for it: packaging, and what the kitchen adds. "
                                                       "What one more is worth holds for a plan that may make a part of a unit.")));
  stead_view_add_right (STEAD_VIEW (self), scarce);
  stead_view_add_right (STEAD_VIEW (self), stead_why_box_new_folded (&self->whys));
}

GtkWidget *
stead_best_use_view_new (void)
{
  return g_object_new (STEAD_TYPE_BEST_USE_VIEW, NULL);
}
