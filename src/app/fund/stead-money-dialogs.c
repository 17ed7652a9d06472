/* stead-money-dialogs.c - a pledge, and money that is planned. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-fund-dialogs.h"
#include "store/stead-build-money-repo.h"
#include "store/stead-store-watch.h"

/* --- a pledge ----------------------------------------------------------------------- */

typedef struct
{
  SteadBuildPledge *pledge;
  gint64            goal_cents;
  SteadField       *who, *cents, *chance, *due;
  GtkDropDown      *part;
  GtkCheckButton   *withdrawn;   /* (nullable) */
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

  stead_store_watch_id (store, &form->pledge->id);
  return stead_build_pledge_repo_save (store, form->pledge, form->goal_cents, error);
}

static gboolean
pledge_remove_act (SteadStore  *store,
                   gpointer     data,
                   GError     **error)
{
  return stead_build_pledge_repo_delete (store, ((Pledge *) data)->pledge->id, error);
}

static gboolean
read_pledge (Pledge    *form,
             SteadDay   today)
{
  SteadBuildPledge *pledge = form->pledge;
  const char *who = NULL;
  gboolean good = stead_field_read_text (form->who, &who);

  good &= stead_field_read_money (form->cents, 0, &pledge->cents);
  good &= stead_field_read_number (form->chance, 0.8, &pledge->chance);
  good &= stead_field_read_day (form->due, STEAD_DAY_NONE, &pledge->due_on);
  if (good && (pledge->chance < 0 || pledge->chance > 1))
    {
      stead_field_set_error (form->chance, _("Enter between 0 and 100."));
      good = FALSE;
    }
  if (good && (pledge->due_on == STEAD_DAY_NONE || pledge->due_on < pledge->pledged_on))
    {
      stead_field_set_error (form->due, _("A pledge is due after it was made. Enter the day."));
      good = FALSE;
    }
  if (!good)
    return FALSE;
  g_free (pledge->who);
  pledge->who = g_strstrip (g_strdup (who));
  pledge->part = stead_fund_get_part (form->part, TRUE);
  if (form->withdrawn != NULL)
    pledge->withdrawn_on = gtk_check_button_get_active (form->withdrawn) ? today : STEAD_DAY_NONE;
  return TRUE;
}

static gboolean
pledge_save (SteadForm  *dialog,
             gpointer    data,
             GError    **error)
{
  Pledge *form = data;
  g_autofree char *step = NULL;

  if (!read_pledge (form, stead_store_get_today (stead_form_get_store (dialog))))
    return FALSE;
  /* Translators: name of a step to undo; who promised money. */
  step = g_strdup_printf (_("pledge of %s"), form->pledge->who);
  if (stead_form_act (dialog, step, pledge_act, form, error))
    return TRUE;
  return stead_form_fail_at (form->cents, error);
}

static gboolean
pledge_remove (SteadForm  *dialog,
               gpointer    data,
               GError    **error)
{
  return stead_form_act (dialog, _("a pledge less"), pledge_remove_act, data, error);
}

static SteadBuildPledge *
load_pledge (SteadStore *store,
             gint64      build_id,
             gint64      id)
{
  g_autoptr(GPtrArray) pledges = stead_build_pledge_repo_list (store, build_id, NULL);
  SteadBuildPledge *pledge;

  for (guint i = 0; pledges != NULL && i < pledges->len; i++)
    if (((SteadBuildPledge *) pledges->pdata[i])->id == id)
      return g_ptr_array_steal_index (pledges, i);
  pledge = stead_build_pledge_new ();
  pledge->build_id = build_id;
  pledge->pledged_on = stead_store_get_today (store);
  return pledge;
}

void
stead_pledge_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id,
                          gint64     goal_cents,
                          gint64     pledge_id)
{
  Pledge *form = g_new0 (Pledge, 1);
  const SteadBuildPledge *pledge;
  SteadForm *dialog;

  pledge = form->pledge = load_pledge (stead_desk_get_store (desk), build_id, pledge_id);
  form->goal_cents = goal_cents;
  dialog = stead_form_new (pledge->id == 0 ? _("New pledge") : _("Pledge"), _("Save pledge"),
                           pledge->id != 0 ? _("Delete pledge") : NULL, pledge_save, pledge_remove, form, pledge_free);
  form->who = stead_form_add (dialog, desk, _("Who promises"), STEAD_FIELD_TEXT);
  form->cents = stead_form_add (dialog, desk, _("How much"), STEAD_FIELD_MONEY);
  form->chance = stead_form_add (dialog, desk, _("How likely it comes"), STEAD_FIELD_PERCENT);
  form->due = stead_form_add (dialog, desk, _("Due on"), STEAD_FIELD_DAY);
  form->part = stead_fund_add_part (dialog, _("It may be used for"), _("all of the build"), pledge->part);
  stead_field_show_number (form->chance, pledge->chance);
  if (pledge->id != 0)
    {
      stead_field_set_text (form->who, pledge->who);
      stead_field_show_money (form->cents, pledge->cents);
      stead_field_show_day (form->due, pledge->due_on);
      form->withdrawn = stead_form_add_check (dialog, _("It was taken back"), pledge->withdrawn_on != STEAD_DAY_NONE);
    }
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->who));
}

/* --- planned money ------------------------------------------------------------------ */

typedef struct
{
  SteadBuildIncome *income;
  SteadField       *name, *first, *times, *every, *mean, *spread;
  GtkCheckButton   *is_sale;
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
  SteadBuildIncome *income = ((Income *) data)->income;

  stead_store_watch_id (store, &income->id);
  return stead_build_income_repo_save (store, income, error);
}

static gboolean
income_remove_act (SteadStore  *store,
                   gpointer     data,
                   GError     **error)
{
  return stead_build_income_repo_delete (store, ((Income *) data)->income->id, error);
}

static gboolean
read_income (Income   *form,
             SteadDay  today)
{
  SteadBuildIncome *income = form->income;
  const char *name = NULL;
  gint64 times = 1, every = 7;
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_day (form->first, STEAD_DAY_NONE, &income->first_on);
  good &= stead_field_read_count (form->times, 1, &times);
  good &= stead_field_read_count (form->every, 7, &every);
  good &= stead_field_read_money (form->mean, 0, &income->mean_cents);
  good &= stead_field_read_money (form->spread, 0, &income->sd_cents);
  if (good && (income->first_on == STEAD_DAY_NONE || (income->id == 0 && income->first_on < today)))
    {
      stead_field_set_error (form->first, _("Enter a day that is still to come."));
      good = FALSE;
    }
  if (good && income->mean_cents <= 0)
    {
      stead_field_set_error (form->mean, _("Enter what one of them clears, above zero."));
      good = FALSE;
    }
  if (!good)
    return FALSE;
  income->times = (int) MIN (times, 1000);
  income->every_days = (int) MIN (every, 1000);
  income->is_sale = gtk_check_button_get_active (form->is_sale);
  g_free (income->name);
  income->name = g_strstrip (g_strdup (name));
  return TRUE;
}

static gboolean
income_save (SteadForm  *dialog,
             gpointer    data,
             GError    **error)
{
  Income *form = data;

  if (!read_income (form, stead_store_get_today (stead_form_get_store (dialog))))
    return FALSE;
  if (stead_form_act (dialog, _("planned sales"), income_act, form, error))
    return TRUE;
  return stead_form_fail_at (form->times, error);
}

static gboolean
income_remove (SteadForm  *dialog,
               gpointer    data,
               GError    **error)
{
  return stead_form_act (dialog, _("planned sales less"), income_remove_act, data, error);
}

static SteadBuildIncome *
load_income (SteadStore *store,
             gint64      build_id,
             gint64      id)
{
  g_autoptr(GPtrArray) incomes = stead_build_income_repo_list (store, build_id, NULL);
  SteadBuildIncome *income;

  for (guint i = 0; incomes != NULL && i < incomes->len; i++)
    if (((SteadBuildIncome *) incomes->pdata[i])->id == id)
      return g_ptr_array_steal_index (incomes, i);
  income = stead_build_income_new ();
  income->build_id = build_id;
  return income;
}

static void
show_income (Income *form)
{
  const SteadBuildIncome *income = form->income;

  if (income->id == 0)
    return;
  stead_field_set_text (form->name, income->name);
  stead_field_show_day (form->first, income->first_on);
  stead_field_show_count (form->times, income->times);
  stead_field_show_count (form->every, income->every_days);
  stead_field_show_money (form->mean, income->mean_cents);
  stead_field_show_money (form->spread, income->sd_cents);
}

void
stead_income_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id,
                          gint64     income_id)
{
  Income *form = g_new0 (Income, 1);
  SteadForm *dialog;

  form->income = load_income (stead_desk_get_store (desk), build_id, income_id);
  dialog = stead_form_new (_("Planned sales"), _("Save plan"), income_id != 0 ? _("Delete plan") : NULL, income_save,
                           income_remove, form, income_free);
  form->name = stead_form_add (dialog, desk, _("What is sold, and where"), STEAD_FIELD_TEXT);
  form->first = stead_form_add (dialog, desk, _("First day"), STEAD_FIELD_DAY);
  form->times = stead_form_add (dialog, desk, _("How many times"), STEAD_FIELD_COUNT);
  form->every = stead_form_add (dialog, desk, _("Days until the next"), STEAD_FIELD_COUNT);
  form->mean = stead_form_add (dialog, desk, _("What one clears"), STEAD_FIELD_MONEY);
  form->spread = stead_form_add (dialog, desk, _("Give or take"), STEAD_FIELD_MONEY);
  form->is_sale = stead_form_add_check (dialog, _("A sale: good and bad seasons move all of them together"),
                                        form->income->is_sale);
  show_income (form);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}
