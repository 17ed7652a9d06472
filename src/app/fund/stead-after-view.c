/* stead-after-view.c - what was bought, how a build ends, and what it costs each year. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-after-view.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-rows.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"
#include "store/stead-build-buy-repo.h"

struct _SteadAfterView
{
  GtkWidget  parent_instance;

  SteadDesk *desk;         /* (nullable) */
  gint64     build_id;
  gint64     chosen_id;    /* of what is being done */
  GtkLabel  *bought, *yearly;
  GtkBox    *buys, *gifts, *upkeeps;
  GtkWidget *given, *buy, *finish;
};

G_DEFINE_FINAL_TYPE (SteadAfterView, stead_after_view, GTK_TYPE_WIDGET)

static char *
money (SteadAfterView *self,
       gint64          cents)
{
  return stead_money_format (cents, stead_desk_get_farm (self->desk)->currency);
}

/* --- what is done --------------------------------------------------------------------- */

static void
act (SteadAfterView *self,
     const char     *step,
     SteadDeskAct    what,
     GtkWidget      *button)
{
  g_autoptr(GError) error = NULL;

  self->chosen_id = stead_fund_row_id (button);
  if (!stead_desk_act (self->desk, step, what, self, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_buy_repo_delete (store, ((SteadAfterView *) data)->chosen_id, error);
}

/* A gift of the bill is there: so many, at its fair value. */
static gboolean
here_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadAfterView *self = data;
  g_autoptr(SteadBuildAnswer) answer = stead_build_answer_new (store, self->build_id, error);

  if (answer == NULL)
    return FALSE;
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];
      SteadBuildBuy buy = { .line_id = row->line_id, .packs = row->open, .cents = row->cents - row->paid_cents };

      if (row->line_id == self->chosen_id)
        return stead_build_buy_repo_give (store, &buy, stead_store_get_today (store), error);
    }
  return TRUE;
}

static void
drop_cb (SteadAfterView *self,
         GtkWidget      *button)
{
  act (self, _("a receipt less"), drop_act, button);
}

static void
here_cb (SteadAfterView *self,
         GtkWidget      *button)
{
  act (self, _("gift that came"), here_act, button);
}

static void
buy_cb (SteadAfterView *self)
{
  stead_buy_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
finish_cb (SteadAfterView *self)
{
  stead_build_end_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
upkeep_cb (SteadAfterView *self)
{
  stead_upkeep_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, 0);
}

static void
change_upkeep_cb (SteadAfterView *self,
                  GtkWidget      *button)
{
  stead_upkeep_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, stead_fund_row_id (button));
}

/* --- what is shown -------------------------------------------------------------------- */

static const SteadBuildRow *
row_of (const SteadBuildAnswer *answer,
        gint64                  line_id)
{
  for (guint i = 0; i < answer->rows->len; i++)
    if (((const SteadBuildRow *) answer->rows->pdata[i])->line_id == line_id)
      return answer->rows->pdata[i];
  return NULL;
}

/* One thing of a receipt, beside what it was planned to cost. */
static char *
buy_text (SteadAfterView      *self,
          const SteadBuildBuy *buy,
          const SteadBuildRow *row)
{
  g_autofree char *packs = stead_number_format (buy->packs, 1);
  g_autofree char *cents = money (self, buy->cents);
  g_autofree char *planned = row == NULL || row->price_cents < 0 ? NULL
    : money (self, stead_money_round ((double) row->price_cents * buy->packs));
  const char *name = row != NULL ? row->name : _("off the bill");

  if (buy->cash_line_id == 0)
    /* Translators: a gift: how many, of what, fair value. */
    return g_strdup_printf (_("%s × %s, worth %s"), packs, name, cents);
  if (planned == NULL)
    /* Translators: something bought: how many, of what, what it cost. */
    return g_strdup_printf (_("%s × %s: %s"), packs, name, cents);
  /* Translators: something bought: how many, of what, what it cost, what was planned for it. */
  return g_strdup_printf (_("%s × %s: %s, planned %s"), packs, name, cents, planned);
}

static char *
receipt_title (const SteadBuildBuy *buy)
{
  g_autofree char *day = stead_day_format (buy->day, STEAD_DAY_STYLE_MEDIUM);

  if (buy->cash_line_id == 0)
    return g_strdup_printf (_("Gift, %s"), day);
  if (buy->reference != NULL)
    /* Translators: a supplier, a day, number of a receipt. */
    return g_strdup_printf (_("%s, %s, receipt %s"), buy->supplier, day, buy->reference);
  /* Translators: a supplier, a day. */
  return g_strdup_printf (_("%s, %s"), buy->supplier, day);
}

/* Receipt by receipt; the lines of one follow each other. */
static void
show_buys (SteadAfterView         *self,
           const SteadBuildAnswer *answer)
{
  stead_make_clear (GTK_WIDGET (self->buys));
  for (guint i = 0; i < answer->buys->len;)
    {
      const SteadBuildBuy *first = answer->buys->pdata[i];
      g_autofree char *title = receipt_title (first);
      g_autoptr(GString) text = g_string_new (NULL);
      gint64 tax = 0;
      GtkWidget *row;

      do
        {
          const SteadBuildBuy *buy = answer->buys->pdata[i];
          g_autofree char *line = buy_text (self, buy, row_of (answer, buy->line_id));

          g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
          tax += buy->tax_cents;
          i++;
        }
      while (i < answer->buys->len && first->cash_line_id != 0 &&
             ((const SteadBuildBuy *) answer->buys->pdata[i])->cash_line_id == first->cash_line_id);
      if (tax > 0)
        {
          g_autofree char *cents = money (self, tax);

          g_string_append_c (text, '\n');
          g_string_append_printf (text, _("Sales tax: %s"), cents);
        }
      row = stead_fund_row (self->buys, first->id, title, text->str);
      if (answer->build->finished_on == STEAD_DAY_NONE)
        stead_fund_row_action (row, _("Take away"), G_CALLBACK (drop_cb), self);
    }
}

/* What was promised and is not there yet. */
static void
show_gifts (SteadAfterView         *self,
            const SteadBuildAnswer *answer)
{
  gboolean any = FALSE;

  stead_make_clear (GTK_WIDGET (self->gifts));
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];
      g_autofree char *packs = NULL;
      g_autofree char *worth = NULL;
      g_autofree char *text = NULL;

      if (!row->given || row->left_out || !(row->open > 0))
        continue;
      packs = stead_number_format (row->open, 1);
      worth = money (self, row->cents - row->paid_cents);
      /* Translators: a gift that is still to come: how many, fair value, who gives it. */
      text = row->giver != NULL ? g_strdup_printf (_("%s, worth %s, from %s"), packs, worth, row->giver)
                                : g_strdup_printf (_("%s, worth %s"), packs, worth);
      stead_fund_row_action (stead_fund_row (self->gifts, row->line_id, row->name, text), _("It is here"),
                             G_CALLBACK (here_cb), self);
      any = TRUE;
    }
  gtk_widget_set_visible (self->given, any);
}

static void
show_upkeeps (SteadAfterView         *self,
              const SteadBuildAnswer *answer)
{
  stead_make_clear (GTK_WIDGET (self->upkeeps));
  for (guint i = 0; i < answer->upkeeps->len; i++)
    {
      const SteadBuildUpkeep *upkeep = answer->upkeeps->pdata[i];
      g_autofree char *amount = stead_build_upkeep_amount (answer, upkeep);
      g_autofree char *price = money (self, upkeep->price_cents);
      g_autofree char *cents = money (self, stead_build_upkeep_cents (answer, upkeep));
      /* Translators: a cost of each year: how many, price of one, all of it. */
      g_autofree char *text = g_strdup_printf (_("%s at %s: %s a year"), amount, price, cents);

      stead_fund_row_action (stead_fund_row (self->upkeeps, upkeep->id, upkeep->name, text), _("Change…"),
                             G_CALLBACK (change_upkeep_cb), self);
    }
}

static void
show_end (SteadAfterView         *self,
          const SteadBuildAnswer *answer)
{
  gboolean done = answer->build->finished_on != STEAD_DAY_NONE;
  g_autofree char *day = done ? stead_day_format (answer->build->finished_on, STEAD_DAY_STYLE_LONG) : NULL;
  g_autofree char *text = NULL;

  gtk_widget_set_visible (self->finish, !done);
  gtk_widget_set_visible (self->buy, !done);
  if (!done)
    {
      stead_make_say (self->bought, answer->bought_sentence, TRUE);
      return;
    }
  /* Translators: when a build was finished; a sentence on what was bought for it. */
  text = g_strdup_printf (_("It stands since %s, and is a thing of the farm in Keep. %s"), day, answer->bought_sentence);
  stead_make_say (self->bought, text, TRUE);
}

void
stead_after_view_show (SteadAfterView         *self,
                       SteadDesk              *desk,
                       const SteadBuildAnswer *answer)
{
  g_return_if_fail (STEAD_IS_AFTER_VIEW (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
  self->build_id = answer->build->id;
  show_end (self, answer);
  show_buys (self, answer);
  show_gifts (self, answer);
  stead_make_say (self->yearly, answer->yearly_sentence, TRUE);
  show_upkeeps (self, answer);
}

/* --- the object ----------------------------------------------------------------------- */

static void
stead_after_view_dispose (GObject *object)
{
  SteadAfterView *self = STEAD_AFTER_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_AFTER_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_after_view_parent_class)->dispose (object);
}

static void
stead_after_view_class_init (SteadAfterViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_after_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-after-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, bought);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, yearly);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, buys);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, gifts);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, upkeeps);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, given);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, buy);
  gtk_widget_class_bind_template_child (widget_class, SteadAfterView, finish);
  gtk_widget_class_bind_template_callback (widget_class, buy_cb);
  gtk_widget_class_bind_template_callback (widget_class, finish_cb);
  gtk_widget_class_bind_template_callback (widget_class, upkeep_cb);
}

static void
stead_after_view_init (SteadAfterView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
