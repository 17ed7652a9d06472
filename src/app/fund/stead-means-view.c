/* stead-means-view.c - who pays for a build: what is there, pledges, grants, planned sales. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-rows.h"
#include "app/fund/stead-means-view.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"

struct _SteadMeansView
{
  GtkWidget  parent_instance;

  SteadDesk *desk;         /* (nullable) */
  gint64     build_id;
  gint64     goal_cents;
  GtkLabel  *money;
  GtkWidget *have;
  GtkBox    *pledges, *grants, *incomes;
};

G_DEFINE_FINAL_TYPE (SteadMeansView, stead_means_view, GTK_TYPE_WIDGET)

static char *
money (SteadMeansView *self,
       gint64          cents)
{
  return stead_money_format (cents, stead_desk_get_farm (self->desk)->currency);
}

/* --- what is done --------------------------------------------------------------------- */

static void
pledge_cb (SteadMeansView *self)
{
  stead_pledge_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, self->goal_cents, 0);
}

static void
change_pledge_cb (SteadMeansView *self,
                  GtkWidget      *button)
{
  stead_pledge_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, self->goal_cents, stead_fund_row_id (button));
}

static void
receive_cb (SteadMeansView *self,
            GtkWidget      *button)
{
  stead_receive_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, stead_fund_row_id (button));
}

static void
grant_cb (SteadMeansView *self)
{
  stead_grant_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, 0);
}

static void
change_grant_cb (SteadMeansView *self,
                 GtkWidget      *button)
{
  stead_grant_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, stead_fund_row_id (button));
}

static void
income_cb (SteadMeansView *self)
{
  stead_income_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, 0);
}

static void
change_income_cb (SteadMeansView *self,
                  GtkWidget      *button)
{
  stead_income_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, stead_fund_row_id (button));
}

/* --- what is shown -------------------------------------------------------------------- */

static void
show_have (SteadMeansView         *self,
           const SteadBuildAnswer *answer)
{
  const struct { const char *name; gint64 cents; gboolean always; } sums[] = {
    { _("Paid already"), answer->spent_cents, FALSE },
    { _("Free money in its fund"), answer->free_cents, TRUE },
    { _("Grants that fit"), answer->bound_cents, FALSE },
    { _("Still missing"), answer->goal_cents - answer->have_cents, TRUE },
    { _("Open pledges, by their chances"), answer->expected_cents, FALSE },
  };
  int row = 0;

  stead_make_clear (self->have);
  for (gsize i = 0; i < G_N_ELEMENTS (sums); i++)
    {
      g_autofree char *text = money (self, sums[i].cents);

      if (sums[i].always || sums[i].cents != 0)
        stead_sell_figures (self->have, row++, NULL, sums[i].name, text, NULL);
    }
}

static char *
pledge_text (SteadMeansView         *self,
             const SteadBuildPledge *pledge)
{
  g_autofree char *cents = money (self, pledge->cents);
  g_autofree char *came = money (self, pledge->received_cents);
  g_autofree char *due = stead_day_format (pledge->due_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *chance = stead_words_percent (pledge->chance, 0);

  if (pledge->cash_line_id != 0)
    /* Translators: a pledge: money that came, money that was promised. */
    return g_strdup_printf (_("%s came of %s promised"), came, cents);
  if (pledge->withdrawn_on != STEAD_DAY_NONE)
    return g_strdup_printf (_("%s, taken back"), cents);
  if (pledge->part >= 0)
    /* Translators: a pledge: sum, day, chance, the part of a build that it is bound to. */
    return g_strdup_printf (_("%s by %s, %s sure; for: %s"), cents, due, chance,
                            stead_build_part_name ((SteadBuildPart) pledge->part));
  /* Translators: a pledge: sum, day, chance. */
  return g_strdup_printf (_("%s by %s, %s sure"), cents, due, chance);
}

static void
show_pledges (SteadMeansView         *self,
              const SteadBuildAnswer *answer)
{
  stead_make_clear (GTK_WIDGET (self->pledges));
  for (guint i = 0; i < answer->pledges->len; i++)
    {
      const SteadBuildPledge *pledge = answer->pledges->pdata[i];
      g_autofree char *text = pledge_text (self, pledge);
      GtkWidget *row = stead_fund_row (self->pledges, pledge->id, pledge->who, text);

      if (pledge->cash_line_id == 0 && pledge->withdrawn_on == STEAD_DAY_NONE)
        stead_fund_row_action (row, _("Received…"), G_CALLBACK (receive_cb), self);
      if (pledge->cash_line_id == 0)
        stead_fund_row_action (row, _("Change…"), G_CALLBACK (change_pledge_cb), self);
    }
  if (answer->pledges->len == 0)
    stead_fund_row_none (self->pledges, _("Nobody has promised money yet. A pledge counts by its chance until it is received."));
}

/* What it allows, in the program's words and in the giver's, and until when. */
static char *
grant_text (SteadMeansView        *self,
            const SteadBuildBound *bound)
{
  g_autofree char *cents = money (self, bound->cents);
  g_autofree char *usable = money (self, bound->usable_cents);
  g_autofree char *day = bound->use_by != STEAD_DAY_NONE ? stead_day_format (bound->use_by, STEAD_DAY_STYLE_LONG) : NULL;
  g_autoptr(GString) text = g_string_new (NULL);

  /* Translators: a grant: money in it, how much of that can be used for this build. */
  g_string_append_printf (text, _("%s in it, %s of it for what is still to be bought."), cents, usable);
  if (bound->part >= 0)
    {
      g_string_append_c (text, ' ');
      /* Translators: a part of a build, like Fence. */
      g_string_append_printf (text, _("It may be used for one part alone: %s."), stead_build_part_name ((SteadBuildPart) bound->part));
    }
  if (day != NULL)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _("It has to be spent by %s."), day);
    }
  if (bound->purpose != NULL)
    g_string_append_printf (text, "\n“%s”", bound->purpose);
  return g_strdup (text->str);
}

static void
show_grants (SteadMeansView         *self,
             const SteadBuildAnswer *answer)
{
  stead_make_clear (GTK_WIDGET (self->grants));
  for (guint i = 0; i < answer->bounds->len; i++)
    {
      const SteadBuildBound *bound = answer->bounds->pdata[i];
      g_autofree char *text = grant_text (self, bound);
      GtkWidget *row = stead_fund_row (self->grants, bound->fund_id, bound->name, text);

      stead_fund_row_action (row, _("Change…"), G_CALLBACK (change_grant_cb), self);
    }
  if (answer->bounds->len == 0)
    stead_fund_row_none (self->grants, _("No grant yet. Money that may be used for one thing only is kept in a fund of its own."));
}

static char *
income_text (SteadMeansView         *self,
             const SteadBuildIncome *income)
{
  g_autofree char *first = stead_day_format (income->first_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *mean = money (self, income->mean_cents);
  g_autofree char *sd = money (self, income->sd_cents);

  if (income->times == 1)
    /* Translators: planned money: when, how much, give or take how much. */
    return g_strdup_printf (_("on %s; it clears %s, give or take %s"), first, mean, sd);
  /* Translators: planned money: first day, how many times, days between, how much, give or take how much. */
  return g_strdup_printf (_("from %s, %d times, each %d days; one clears %s, give or take %s"), first, income->times,
                          income->every_days, mean, sd);
}

static void
show_incomes (SteadMeansView         *self,
              const SteadBuildAnswer *answer)
{
  stead_make_clear (GTK_WIDGET (self->incomes));
  stead_fund_row_none (self->incomes, _("Sale days that are planned in Sell count by themselves."));
  for (guint i = 0; i < answer->incomes->len; i++)
    {
      const SteadBuildIncome *income = answer->incomes->pdata[i];
      g_autofree char *text = income_text (self, income);
      GtkWidget *row = stead_fund_row (self->incomes, income->id, income->name, text);

      stead_fund_row_action (row, _("Change…"), G_CALLBACK (change_income_cb), self);
    }
}

void
stead_means_view_show (SteadMeansView         *self,
                       SteadDesk              *desk,
                       const SteadBuildAnswer *answer)
{
  g_return_if_fail (STEAD_IS_MEANS_VIEW (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
  self->build_id = answer->build->id;
  self->goal_cents = answer->goal_cents;
  stead_make_say (self->money, answer->money_sentence, TRUE);
  show_have (self, answer);
  show_pledges (self, answer);
  show_grants (self, answer);
  show_incomes (self, answer);
}

/* --- the object ----------------------------------------------------------------------- */

static void
stead_means_view_dispose (GObject *object)
{
  SteadMeansView *self = STEAD_MEANS_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_MEANS_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_means_view_parent_class)->dispose (object);
}

static void
stead_means_view_class_init (SteadMeansViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_means_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-means-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadMeansView, money);
  gtk_widget_class_bind_template_child (widget_class, SteadMeansView, have);
  gtk_widget_class_bind_template_child (widget_class, SteadMeansView, pledges);
  gtk_widget_class_bind_template_child (widget_class, SteadMeansView, grants);
  gtk_widget_class_bind_template_child (widget_class, SteadMeansView, incomes);
  gtk_widget_class_bind_template_callback (widget_class, pledge_cb);
  gtk_widget_class_bind_template_callback (widget_class, grant_cb);
  gtk_widget_class_bind_template_callback (widget_class, income_cb);
}

static void
stead_means_view_init (SteadMeansView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
