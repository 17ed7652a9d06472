/* stead-sell-page.c - the place Sell: sale days from their plan to the cash-up.
 *
 * Left the season and its sale days, right what was chosen: a sale is planned, tallied,
 * cashed up and looked back at in this order.  Only the view that can be seen reads the
 * farm.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-sell-page.h"

#include "answer/stead-season-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-cash-up-view.h"
#include "app/sell/stead-plan-view.h"
#include "app/sell/stead-result-view.h"
#include "app/sell/stead-sale-dialog.h"
#include "app/sell/stead-season-view.h"
#include "app/sell/stead-tally-view.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"

struct _SteadSellPage
{
  SteadPage         parent_instance;

  gint64            sale_id;    /* shown; 0: the season */
  gboolean          begun;      /* the next sale was chosen once */
  gboolean          quiet;      /* the code fills the list, not the person */
  char             *listed;     /* what the list says; (nullable): nothing yet */
  SteadSaleStage    stage;      /* that the chips are of, */
  gint64            staged;     /* for this sale; 0: none */

  SteadChips       *chips;
  GtkStack         *stack, *views;
  GtkListBox       *sales;
  GtkWidget        *add;
  SteadSeasonView  *season;
  SteadPlanView    *plan;
  SteadTallyView   *tally;
  SteadCashUpView  *cash_up;
  SteadResultView  *result;
};

G_DEFINE_FINAL_TYPE (SteadSellPage, stead_sell_page, STEAD_TYPE_PAGE)

/* In the order of the chips; chip ids count from 1. */
enum { PLAN = 1, TALLY, CASH_UP, RESULT };

static const char * const names[] = { "season", "plan", "tally", "cash-up", "result" };

/* --- the chosen sale --------------------------------------------------------------------- */

static void
show_view (SteadSellPage *self)
{
  SteadDesk *desk = stead_page_get_desk (STEAD_PAGE (self));
  gint64 view = self->sale_id != 0 ? stead_chips_get (self->chips) : 0;

  gtk_widget_set_visible (GTK_WIDGET (self->chips), self->sale_id != 0);
  gtk_stack_set_visible_child_name (self->views, names[CLAMP (view, 0, RESULT)]);
  switch (view)
    {
    case 0: stead_season_view_show (self->season, desk); break;
    case PLAN: stead_plan_view_show (self->plan, desk, self->sale_id); break;
    case TALLY: stead_tally_view_show (self->tally, desk, self->sale_id); break;
    case CASH_UP: stead_cash_up_view_show (self->cash_up, desk, self->sale_id); break;
    default: stead_result_view_show (self->result, desk, self->sale_id); break;
    }
}

/* The view that is wanted most at a stage of a sale. */
static int
view_of_stage (SteadSaleStage stage)
{
  return stage == STEAD_SALE_DONE ? RESULT : stage == STEAD_SALE_PLANNED ? PLAN : TALLY;
}

/* In the list, where the season stands first; 0: no sale of the season. */
static int
index_of (const SteadSeasonAnswer *season,
          gint64                   sale_id)
{
  for (guint i = 0; i < season->days->len; i++)
    if (((SteadSeasonDay *) season->days->pdata[i])->sale->id == sale_id)
      return (int) i + 1;
  return 0;
}

/* (nullable) */
static const SteadSeasonDay *
find_day (const SteadSeasonAnswer *season,
          gint64                   sale_id)
{
  int index = index_of (season, sale_id);

  return index > 0 ? season->days->pdata[index - 1] : NULL;
}

/* The chips that have a meaning for the sale; the one that was chosen stays if it is there. */
static void
fill_chips (SteadSellPage        *self,
            const SteadSeasonDay *day,
            gboolean              is_new)
{
  gint64 before = stead_chips_get (self->chips);
  gboolean done = day->stage == STEAD_SALE_DONE, planned = day->stage == STEAD_SALE_PLANNED;

  if (self->staged != day->sale->id || self->stage != day->stage)
    {
      stead_chips_clear (self->chips);
      stead_chips_append (self->chips, PLAN, _("Plan"));
      if (!done)
        stead_chips_append (self->chips, TALLY, _("Tally"));
      if (!done && !planned)
        stead_chips_append (self->chips, CASH_UP, _("Cash up"));
      if (done)
        stead_chips_append (self->chips, RESULT, _("Result"));
      self->staged = day->sale->id;
      self->stage = day->stage;
    }
  if (is_new || (done && before != PLAN) || (planned && before == CASH_UP) || (!done && before == RESULT) || before == 0)
    before = view_of_stage (day->stage);
  stead_chips_choose (self->chips, before);
}

/* --- the list ------------------------------------------------------------------------------- */

static char *
day_detail (const SteadSeasonDay *day)
{
  g_autofree char *when = stead_day_format (day->sale->day, STEAD_DAY_STYLE_MEDIUM);

  /* Translators: a day, and whether a sale is planned or done. */
  return g_strdup_printf (_("%s, %s"), when, stead_sale_stage_name (day->stage));
}

/* All that the list says, to tell whether it has to be filled anew. */
static char *
list_text (const SteadSeasonAnswer *season)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < season->days->len; i++)
    {
      const SteadSeasonDay *day = season->days->pdata[i];
      g_autofree char *detail = day_detail (day);

      g_string_append_printf (text, "%" G_GINT64_FORMAT "\n%s\n%s\n", day->sale->id, day->sale->name, detail);
    }
  return g_string_free (text, FALSE);
}

static void
fill_rows (SteadSellPage           *self,
           const SteadSeasonAnswer *season)
{
  stead_make_clear (GTK_WIDGET (self->sales));
  gtk_list_box_append (self->sales, stead_make_row (0, _("The season"), _("all sales, and a calendar")));
  for (guint i = 0; i < season->days->len; i++)
    {
      const SteadSeasonDay *day = season->days->pdata[i];
      g_autofree char *detail = day_detail (day);

      gtk_list_box_append (self->sales, stead_make_row (day->sale->id, day->sale->name, detail));
    }
}

static void
fill_list (SteadSellPage           *self,
           const SteadSeasonAnswer *season)
{
  g_autofree char *text = list_text (season);

  self->quiet = TRUE;
  if (g_strcmp0 (text, self->listed) != 0)
    {
      fill_rows (self, season);
      g_free (self->listed);
      self->listed = g_steal_pointer (&text);
    }
  gtk_list_box_select_row (self->sales, gtk_list_box_get_row_at_index (self->sales, index_of (season, self->sale_id)));
  self->quiet = FALSE;
}

static void
stead_sell_page_refresh (SteadPage *page)
{
  SteadSellPage *self = STEAD_SELL_PAGE (page);
  SteadDesk *desk = stead_page_get_desk (page);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadSeasonAnswer) season = stead_season_answer_new (stead_desk_get_store (desk), &error);
  const SteadSeasonDay *day;
  gboolean is_new = FALSE;

  if (season == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if (!self->begun)
    {
      self->sale_id = self->sale_id != 0 ? self->sale_id : season->next_id;
      self->begun = is_new = TRUE;
    }
  day = find_day (season, self->sale_id);
  if (day == NULL)
    self->sale_id = 0;
  else
    fill_chips (self, day, is_new);
  fill_list (self, season);
  gtk_widget_set_visible (self->add, season->days->len > 0);
  gtk_stack_set_visible_child_name (self->stack, season->days->len > 0 ? "sales" : "empty");
  show_view (self);
}

static void
choose (SteadSellPage *self,
        gint64         sale_id)
{
  self->sale_id = sale_id;
  self->begun = FALSE;
  if (sale_id == 0)
    self->begun = TRUE;
  stead_page_invalidate (STEAD_PAGE (self));
}

static void
row_cb (SteadSellPage *self,
        GtkListBoxRow *row)
{
  if (!self->quiet && row != NULL)
    choose (self, stead_make_row_id (GTK_WIDGET (row)));
}

static void
chosen_cb (SteadSellPage *self,
           gint64         view)
{
  show_view (self);
}

static void
new_cb (SteadSellPage *self)
{
  stead_sale_dialog_show (GTK_WIDGET (self), stead_page_get_desk (STEAD_PAGE (self)), 0);
}

static void
stead_sell_page_show (SteadPage   *page,
                      SteadTarget  target,
                      gint64       id)
{
  if (target == STEAD_TARGET_SALE)
    choose (STEAD_SELL_PAGE (page), id);
}

/* --- the page ---------------------------------------------------------------------------------- */

static void
stead_sell_page_dispose (GObject *object)
{
  SteadSellPage *self = STEAD_SELL_PAGE (object);

  self->quiet = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_SELL_PAGE);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->listed, g_free);
  G_OBJECT_CLASS (stead_sell_page_parent_class)->dispose (object);
}

static void
stead_sell_page_class_init (SteadSellPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  g_type_ensure (STEAD_TYPE_SEASON_VIEW);
  g_type_ensure (STEAD_TYPE_PLAN_VIEW);
  g_type_ensure (STEAD_TYPE_TALLY_VIEW);
  g_type_ensure (STEAD_TYPE_CASH_UP_VIEW);
  g_type_ensure (STEAD_TYPE_RESULT_VIEW);
  G_OBJECT_CLASS (klass)->dispose = stead_sell_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_sell_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_sell_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("sell/stead-sell-page.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, views);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, sales);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, add);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, season);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, plan);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, tally);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, cash_up);
  gtk_widget_class_bind_template_child (widget_class, SteadSellPage, result);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_cb);
}

static void
stead_sell_page_init (SteadSellPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->stack);
  stead_ui_hush_stack (self->views);
}
