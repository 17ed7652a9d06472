/* stead-season-view.c - all sale days: a calendar, and what does best. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-season-view.h"

#include "answer/stead-season-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-over-chart.h"
#include "app/sell/stead-sell-parts.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

struct _SteadSeasonView
{
  GtkBox             parent_instance;

  SteadDesk         *desk;      /* not owned */
  SteadSeasonAnswer *answer;
  GtkLabel          *sentence, *run, *on_day;
  GtkCalendar       *calendar;
  GtkWidget         *days, *products, *places;
  SteadOverChart    *overs;
  SteadWhyBox       *whys;
};

G_DEFINE_FINAL_TYPE (SteadSeasonView, stead_season_view, GTK_TYPE_BOX)

static SteadDay
calendar_day (SteadSeasonView *self)
{
  g_autoptr(GDateTime) date = gtk_calendar_get_date (self->calendar);

  return stead_day_new (g_date_time_get_year (date), g_date_time_get_month (date), g_date_time_get_day_of_month (date));
}

/* Days with a sale are marked, and the sale of the chosen day is named. */
static void
mark_cb (SteadSeasonView *self)
{
  SteadDay chosen = calendar_day (self);
  int year, month, mday;
  GString *text = g_string_new (NULL);

  stead_day_split (chosen, &year, &month, &mday);
  gtk_calendar_clear_marks (self->calendar);
  for (guint i = 0; self->answer != NULL && i < self->answer->days->len; i++)
    {
      const SteadSale *sale = ((SteadSeasonDay *) self->answer->days->pdata[i])->sale;
      int y, m, d;

      stead_day_split (sale->day, &y, &m, &d);
      if (y == year && m == month)
        gtk_calendar_mark_day (self->calendar, (guint) d);
      if (sale->day == chosen)
        {
          g_autofree char *when = stead_sale_when (sale);

          g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n" : "", sale->name, when);
        }
    }
  gtk_label_set_text (self->on_day, text->len > 0 ? text->str : _("No sale on this day. Days with a sale have a mark."));
  g_string_free (text, TRUE);
}

static void
show_days (SteadSeasonView *self)
{
  const char *currency = self->answer->farm->currency;

  stead_make_clear (self->days);
  stead_sell_figures (self->days, 0, "soft", _("Sale day"), _("Taken"), _("An hour"), _("Over or short"), NULL);
  for (guint i = 0; i < self->answer->days->len; i++)
    {
      const SteadSeasonDay *day = self->answer->days->pdata[i];
      g_autofree char *when = stead_day_format (day->sale->day, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: a sale and its day. */
      g_autofree char *name = g_strdup_printf (_("%s, %s"), day->sale->name, when);
      g_autofree char *taken = stead_money_format (day->takings_cents, currency);
      g_autofree char *hour = stead_money_format (day->per_hour_cents, currency);
      g_autofree char *over = stead_money_format (day->over_cents, currency);

      if (day->stage == STEAD_SALE_DONE)
        stead_sell_figures (self->days, (int) i + 1, NULL, name, taken, hour, over, NULL);
      else
        stead_sell_figures (self->days, (int) i + 1, NULL, name, stead_sale_stage_name (day->stage), "–", "–", NULL);
    }
}

static void
show_sums (SteadSeasonView *self,
           GtkWidget       *grid,
           GPtrArray       *sums,
           const char      *head)
{
  const char *currency = self->answer->farm->currency;

  stead_make_clear (grid);
  stead_sell_figures (grid, 0, "soft", head, _("Sales"), _("Taken"), _("An hour"), NULL);
  for (guint i = 0; i < sums->len; i++)
    {
      const SteadSeasonSum *sum = sums->pdata[i];
      g_autofree char *n = g_strdup_printf ("%u", sum->n_days);
      g_autofree char *taken = stead_money_format (sum->takings_cents, currency);
      g_autofree char *hour = stead_money_format (sum->per_hour_cents, currency);

      stead_sell_figures (grid, (int) i + 1, NULL, sum->name, n, taken, hour, NULL);
    }
}

void
stead_season_view_show (SteadSeasonView *self,
                        SteadDesk       *desk)
{
  g_autoptr(GError) error = NULL;
  SteadSeasonAnswer *answer = stead_season_answer_new (stead_desk_get_store (desk), &error);
  g_autoptr(GPtrArray) whys = NULL;

  self->desk = desk;
  if (answer == NULL)
    {
      stead_make_say (self->sentence, error->message, FALSE);
      return;
    }
  g_clear_pointer (&self->answer, stead_season_answer_free);
  self->answer = answer;
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->run, answer->run_text, FALSE);
  stead_over_chart_set (self->overs, answer);
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (self->overs)), answer->overs->len > 0);
  show_days (self);
  show_sums (self, self->products, answer->products, _("Product"));
  show_sums (self, self->places, answer->places, _("Place"));
  gtk_widget_set_visible (gtk_widget_get_parent (self->days), answer->days->len > 0);
  gtk_widget_set_visible (gtk_widget_get_parent (self->products), answer->products->len > 0);
  gtk_widget_set_visible (gtk_widget_get_parent (self->places), answer->places->len > 0);
  whys = stead_season_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
  mark_cb (self);
}

static void
stead_season_view_dispose (GObject *object)
{
  SteadSeasonView *self = STEAD_SEASON_VIEW (object);

  g_clear_pointer (&self->answer, stead_season_answer_free);
  G_OBJECT_CLASS (stead_season_view_parent_class)->dispose (object);
}

static void
stead_season_view_class_init (SteadSeasonViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_season_view_dispose;
}

static GtkWidget *
add_grid (GtkWidget  *cards,
          const char *heading)
{
  GtkWidget *card = stead_sell_card (cards, heading);
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_box_append (GTK_BOX (card), grid);
  return grid;
}

/* GTK 4.8 leaves the arrows of a calendar without names; they come month first. */
static void
name_arrows (GtkWidget *widget,
             int       *at)
{
  static const char * const names[] = { N_("Month before"), N_("Month after"), N_("Year before"), N_("Year after") };

  if (GTK_IS_BUTTON (widget) && *at < (int) G_N_ELEMENTS (names))
    stead_ui_name (widget, _(names[(*at)++]));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    name_arrows (child, at);
}

static void
stead_season_view_init (SteadSeasonView *self)
{
  GtkWidget *cards, *card;
  int arrow = 0;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->sentence = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->sentence));
  cards = stead_sell_columns (GTK_WIDGET (self));
  self->days = add_grid (cards, _("What each sale brought"));
  card = stead_sell_card (cards, _("Does the box agree?"));
  self->run = GTK_LABEL (stead_make_label (NULL, NULL));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->run));
  self->overs = STEAD_OVER_CHART (stead_over_chart_new ());
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->overs));
  self->products = add_grid (cards, _("What sells best"));
  self->places = add_grid (cards, _("Where it sells best"));
  card = stead_sell_card (cards, _("When the sales are"));
  self->calendar = GTK_CALENDAR (gtk_calendar_new ());
  gtk_widget_set_halign (GTK_WIDGET (self->calendar), GTK_ALIGN_START);
  stead_ui_name (GTK_WIDGET (self->calendar), _("Calendar of the sales"));
  name_arrows (GTK_WIDGET (self->calendar), &arrow);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->calendar));
  self->on_day = GTK_LABEL (stead_make_label (NULL, NULL));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->on_day));
  gtk_box_append (GTK_BOX (self), stead_why_box_new_folded (&self->whys));
  g_signal_connect_swapped (self->calendar, "day-selected", G_CALLBACK (mark_cb), self);
  g_signal_connect_swapped (self->calendar, "next-month", G_CALLBACK (mark_cb), self);
  g_signal_connect_swapped (self->calendar, "prev-month", G_CALLBACK (mark_cb), self);
  g_signal_connect_swapped (self->calendar, "next-year", G_CALLBACK (mark_cb), self);
  g_signal_connect_swapped (self->calendar, "prev-year", G_CALLBACK (mark_cb), self);
}
