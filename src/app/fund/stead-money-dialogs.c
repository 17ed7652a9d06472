/* stead-money-dialogs.c - a pledge, money that is planned, and a line of the bill. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-form.h"
#include "store/stead-build-bill-repo.h"
#include "store/stead-build-money-repo.h"

static SteadDesk *
desk_of (SteadFundForm *dialog)
{
  return stead_dialog_get_desk (STEAD_DIALOG (dialog));
}

/* --- a pledge ----------------------------------------------------------------------- */

typedef struct
{
  SteadBuildPledge *pledge;
  gint64            goal_cents;
  SteadField       *who, *cents, *chance, *due;
} Pledge;

static void
pledge_free (gpointer data)
{
  stead_build_pledge_free (((Pledge *) data)->pledge);
  g_free (data);
}

static gboolean
pledge_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  Pledge *form = data;

  return stead_build_pledge_repo_save (store, form->pledge, form->goal_cents, error);
}

static gboolean
pledge_save (SteadFundForm  *dialog,
             gpointer        data,
             GError        **error)
{
  Pledge *form = data;
  const char *who = NULL;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (form->who, &who);

  good &= stead_field_read_money (form->cents, 0, &form->pledge->cents);
  good &= stead_field_read_number (form->chance, 0.8, &form->pledge->chance);
  good &= stead_field_read_day (form->due, STEAD_DAY_NONE, &form->pledge->due_on);
  if (!good)
    return FALSE;
  g_free (form->pledge->who);
  form->pledge->who = g_strstrip (g_strdup (who));
  /* Translators: name of a step to undo; who promised money. */
  step = g_strdup_printf (_("pledge of %s"), form->pledge->who);
  return stead_desk_act (desk_of (dialog), step, pledge_act, form, error);
}

void
stead_pledge_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id,
                          gint64     goal_cents)
{
  Pledge *form = g_new0 (Pledge, 1);
  SteadFundForm *dialog = stead_fund_form_new (_("New pledge"), _("Save pledge"), NULL, pledge_save, NULL, form, pledge_free);

  form->pledge = stead_build_pledge_new ();
  form->pledge->build_id = build_id;
  form->pledge->pledged_on = stead_store_get_today (stead_desk_get_store (desk));
  form->goal_cents = goal_cents;
  form->who = stead_fund_form_add (dialog, desk, _("Who promises"), STEAD_FIELD_TEXT);
  form->cents = stead_fund_form_add (dialog, desk, _("How much"), STEAD_FIELD_MONEY);
  form->chance = stead_fund_form_add (dialog, desk, _("How likely it comes"), STEAD_FIELD_PERCENT);
  form->due = stead_fund_form_add (dialog, desk, _("Due on"), STEAD_FIELD_DAY);
  stead_field_show_number (form->chance, form->pledge->chance);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->who));
}

/* --- planned money ------------------------------------------------------------------ */

typedef struct
{
  SteadBuildIncome *income;
  SteadField       *name, *first, *times, *every, *mean, *spread;
} Income;

static void
income_free (gpointer data)
{
  stead_build_income_free (((Income *) data)->income);
  g_free (data);
}

static gboolean
income_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_build_income_repo_save (store, ((Income *) data)->income, error);
}

static gboolean
income_save (SteadFundForm  *dialog,
             gpointer        data,
             GError        **error)
{
  Income *form = data;
  SteadBuildIncome *income = form->income;
  const char *name = NULL;
  gint64 times = 1, every = 7;
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_day (form->first, STEAD_DAY_NONE, &income->first_on);
  good &= stead_field_read_count (form->times, 1, &times);
  good &= stead_field_read_count (form->every, 7, &every);
  good &= stead_field_read_money (form->mean, 0, &income->mean_cents);
  good &= stead_field_read_money (form->spread, 0, &income->sd_cents);
  if (!good)
    return FALSE;
  income->times = (int) MIN (times, 1000);
  income->every_days = (int) MIN (every, 1000);
  g_free (income->name);
  income->name = g_strstrip (g_strdup (name));
  return stead_desk_act (desk_of (dialog), _("planned sales"), income_act, form, error);
}

void
stead_income_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id)
{
  Income *form = g_new0 (Income, 1);
  SteadFundForm *dialog = stead_fund_form_new (_("Planned sales"), _("Save plan"), NULL, income_save, NULL, form, income_free);

  form->income = stead_build_income_new ();
  form->income->build_id = build_id;
  form->name = stead_fund_form_add (dialog, desk, _("What is sold, and where"), STEAD_FIELD_TEXT);
  form->first = stead_fund_form_add (dialog, desk, _("First day"), STEAD_FIELD_DAY);
  form->times = stead_fund_form_add (dialog, desk, _("How many times"), STEAD_FIELD_COUNT);
  form->every = stead_fund_form_add (dialog, desk, _("Days until the next"), STEAD_FIELD_COUNT);
  form->mean = stead_fund_form_add (dialog, desk, _("What one clears"), STEAD_FIELD_MONEY);
  form->spread = stead_fund_form_add (dialog, desk, _("Give or take"), STEAD_FIELD_MONEY);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}

/* --- a line of the bill --------------------------------------------------------------- */

typedef struct
{
  SteadBuildLine *line;
  SteadField     *name, *quantity, *price;
} Line;

static void
line_free (gpointer data)
{
  stead_build_line_free (((Line *) data)->line);
  g_free (data);
}

static gboolean
line_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_line_repo_save (store, ((Line *) data)->line, error);
}

static gboolean
line_save (SteadFundForm  *dialog,
           gpointer        data,
           GError        **error)
{
  Line *form = data;
  const char *name = NULL;
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_number (form->quantity, 1, &form->line->quantity);
  good &= stead_field_read_money (form->price, -1, &form->line->price_cents);
  if (!good)
    return FALSE;
  g_free (form->line->name);
  form->line->name = g_strstrip (g_strdup (name));
  return stead_desk_act (desk_of (dialog), _("line of the bill"), line_act, form, error);
}

void
stead_line_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     build_id)
{
  Line *form = g_new0 (Line, 1);
  SteadFundForm *dialog = stead_fund_form_new (_("New line"), _("Save line"), NULL, line_save, NULL, form, line_free);

  form->line = stead_build_line_new ();
  form->line->build_id = build_id;
  form->name = stead_fund_form_add (dialog, desk, _("What is needed"), STEAD_FIELD_TEXT);
  form->quantity = stead_fund_form_add (dialog, desk, _("How many"), STEAD_FIELD_NUMBER);
  form->price = stead_fund_form_add (dialog, desk, _("Price of one"), STEAD_FIELD_MONEY);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}
