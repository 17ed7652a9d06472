/* stead-receive-dialog.c - money that was promised has come. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "app/keep/stead-cash-picks.h"
#include "store/stead-store-watch.h"

typedef struct
{
  SteadBuildPledge *pledge;
  SteadCashLine    *cash;
  SteadField       *cents, *day, *reference;
  SteadPick        *account, *fund;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;

  stead_build_pledge_free (form->pledge);
  stead_cash_line_free (form->cash);
  g_free (form);
}

static gboolean
receive_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  Form *form = data;

  stead_store_watch_id (store, &form->cash->id);
  stead_store_watch_id (store, &form->pledge->cash_line_id);
  return stead_build_pledge_repo_receive (store, form->pledge, form->cash, error);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (dialog));
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_money (form->cents, 0, &form->cash->cents);

  good &= stead_field_read_day (form->day, today, &form->cash->day);
  if (good && form->cash->cents <= 0)
    {
      stead_field_set_error (form->cents, _("Enter the sum that came, above zero."));
      good = FALSE;
    }
  if (good && form->cash->day > today)
    {
      stead_field_set_error (form->day, _("It came today or before."));
      good = FALSE;
    }
  if (!good)
    return FALSE;
  g_free (form->cash->reference);
  form->cash->reference = g_strdup (stead_field_is_empty (form->reference) ? NULL : stead_field_get_text (form->reference));
  form->cash->account_id = stead_pick_get (form->account);
  form->cash->fund_id = stead_pick_get (form->fund);
  /* Translators: name of a step to undo; who gave money. */
  step = g_strdup_printf (_("money of %s"), form->pledge->who);
  return stead_desk_act (desk, step, receive_act, form, error);
}

static SteadBuildPledge *
find_pledge (SteadStore *store,
             gint64      build_id,
             gint64      id)
{
  g_autoptr(GPtrArray) pledges = stead_build_pledge_repo_list (store, build_id, NULL);

  for (guint i = 0; pledges != NULL && i < pledges->len; i++)
    if (((SteadBuildPledge *) pledges->pdata[i])->id == id)
      return g_ptr_array_steal_index (pledges, i);
  return NULL;
}

/* Bound money goes where bound money lies; all other into the build's own fund. */
static gint64
usual_fund (SteadStore             *store,
            const SteadBuildPledge *pledge)
{
  g_autoptr(GArray) grants = stead_build_grant_repo_list (store, pledge->build_id, NULL);
  g_autoptr(SteadBuild) build = stead_build_repo_get (store, pledge->build_id, NULL);

  for (guint i = 0; pledge->part >= 0 && grants != NULL && i < grants->len; i++)
    if (g_array_index (grants, SteadBuildGrant, i).part == pledge->part)
      return g_array_index (grants, SteadBuildGrant, i).fund_id;
  return build != NULL ? build->fund_id : 0;
}

void
stead_receive_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     build_id,
                           gint64     pledge_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadBuildPledge *pledge = find_pledge (store, build_id, pledge_id);
  g_autofree char *title = NULL;
  SteadForm *dialog;
  Form *form;

  if (pledge == NULL)
    return;
  form = g_new0 (Form, 1);
  form->pledge = pledge;
  form->cash = stead_cash_line_new ();
  /* Translators: title of a dialog; who gave money. */
  title = g_strdup_printf (_("Money of %s"), pledge->who);
  dialog = stead_form_new (title, _("Save money received"), NULL, save_cb, NULL, form, form_free);
  form->cents = stead_form_add (dialog, desk, _("How much came"), STEAD_FIELD_MONEY);
  stead_field_show_money (form->cents, pledge->cents);
  form->day = stead_form_add (dialog, desk, _("Day"), STEAD_FIELD_DAY);
  stead_field_show_day (form->day, stead_store_get_today (store));
  form->account = stead_form_add_pick (dialog, _("Into the account"));
  stead_cash_picks_accounts (form->account, store, 0);
  form->fund = stead_form_add_pick (dialog, _("Into the fund"));
  stead_cash_picks_funds (form->fund, store, usual_fund (store, pledge));
  form->reference = stead_form_add (dialog, desk, _("Number of the check or slip"), STEAD_FIELD_TEXT);
  stead_form_add_text (dialog, _("It is entered in the cash book of Keep, too. Pay it in at the school, and write the giver a receipt."), "soft");
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->cents));
}
