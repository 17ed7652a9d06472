/* stead-grant-dialog.c - money that is bound: what its giver allows, and until when. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "app/keep/stead-cash-picks.h"
#include "store/stead-store-watch.h"

typedef struct
{
  gint64       build_id;
  gint64       old_id;     /* the grant that is changed; 0: a new one */
  GArray      *grants;     /* of SteadBuildGrant: all of the build */
  SteadFund   *fund;       /* a new one, or the chosen one with its purpose changed; (nullable) */
  SteadPick   *choice;
  SteadField  *name, *purpose, *use_by;
  GtkDropDown *part;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;

  g_array_unref (form->grants);
  g_clear_pointer (&form->fund, stead_fund_free);
  g_free (form);
}

static int
find_grant (const GArray *grants,
            gint64        fund_id)
{
  for (guint i = 0; i < grants->len; i++)
    if (g_array_index (grants, SteadBuildGrant, i).fund_id == fund_id)
      return (int) i;
  return -1;
}

/* The last one of the list is the one that was typed. */
static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  Form *form = data;
  SteadBuildGrant *last = &g_array_index (form->grants, SteadBuildGrant, form->grants->len - 1);

  if (form->fund != NULL)
    stead_store_watch_id (store, &form->fund->id);
  if (form->fund != NULL && !stead_fund_repo_save (store, form->fund, error))
    return FALSE;
  if (form->fund != NULL)
    last->fund_id = form->fund->id;
  return stead_build_grant_repo_set (store, form->build_id, (const SteadBuildGrant *) (gpointer) form->grants->data,
                                     form->grants->len, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  Form *form = data;

  return stead_build_grant_repo_set (store, form->build_id, (const SteadBuildGrant *) (gpointer) form->grants->data,
                                     form->grants->len, error);
}

static SteadFund *
find_fund (SteadStore *store,
           gint64      id)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, TRUE, NULL);

  for (guint i = 0; funds != NULL && i < funds->len; i++)
    if (((SteadFund *) funds->pdata[i])->id == id)
      return g_ptr_array_steal_index (funds, i);
  return NULL;
}

/* A fund that is there keeps its name; what it allows may be said anew. */
static gboolean
read_fund (Form       *form,
           SteadStore *store,
           gint64      fund_id)
{
  const char *name = NULL;
  const char *purpose = stead_field_get_text (form->purpose);

  g_clear_pointer (&form->fund, stead_fund_free);
  if (fund_id == 0 && !stead_field_read_text (form->name, &name))
    return FALSE;
  form->fund = fund_id != 0 ? find_fund (store, fund_id) : g_new0 (SteadFund, 1);
  if (form->fund == NULL)
    return TRUE;
  if (fund_id == 0)
    {
      form->fund->name = g_strstrip (g_strdup (name));
      form->fund->closed_on = STEAD_DAY_NONE;
    }
  g_free (form->fund->purpose);
  form->fund->purpose = *purpose != '\0' ? g_strstrip (g_strdup (purpose)) : NULL;
  return TRUE;
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (dialog));
  gint64 fund_id = form->old_id != 0 ? form->old_id : stead_pick_get (form->choice);
  SteadBuildGrant grant = { fund_id, stead_fund_get_part (form->part, TRUE), STEAD_DAY_NONE };
  g_autoptr(GArray) before = g_array_copy (form->grants);
  int old = find_grant (form->grants, fund_id);

  if (!stead_field_read_day (form->use_by, STEAD_DAY_NONE, &grant.use_by) ||
      !read_fund (form, stead_desk_get_store (desk), fund_id))
    return FALSE;
  if (old >= 0)
    g_array_remove_index (form->grants, (guint) old);
  g_array_append_val (form->grants, grant);
  if (stead_desk_act (desk, _("grant"), save_act, form, error))
    return TRUE;
  g_array_set_size (form->grants, 0);
  g_array_append_vals (form->grants, before->data, before->len);
  return fund_id == 0 ? stead_form_fail_at (form->name, error) : FALSE;
}

/* The money stays in its fund; the build no longer counts on it. */
static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  Form *form = data;
  int old = find_grant (form->grants, form->old_id);

  if (old >= 0)
    g_array_remove_index (form->grants, (guint) old);
  return stead_form_act (dialog, _("a grant less"), remove_act, form, error);
}

static void
choice_cb (Form *form)
{
  gtk_widget_set_visible (GTK_WIDGET (form->name), stead_pick_get (form->choice) == 0);
}

static void
add_choice (Form       *form,
            SteadForm  *dialog,
            SteadStore *store)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, FALSE, NULL);
  g_autoptr(SteadBuild) build = stead_build_repo_get (store, form->build_id, NULL);

  form->choice = stead_form_add_pick (dialog, _("Fund of the cash book"));
  stead_pick_append (form->choice, 0, _("a new one"));
  for (guint i = 0; funds != NULL && i < funds->len; i++)
    {
      const SteadFund *fund = funds->pdata[i];

      if (build != NULL && fund->id != build->fund_id && (find_grant (form->grants, fund->id) < 0 || fund->id == form->old_id))
        stead_pick_append (form->choice, fund->id, fund->name);
    }
  stead_pick_show (form->choice, form->old_id);
  gtk_widget_set_sensitive (GTK_WIDGET (form->choice), form->old_id == 0);
  g_signal_connect_swapped (form->choice, "changed", G_CALLBACK (choice_cb), form);
}

static void
show_grant (Form       *form,
            SteadStore *store,
            SteadDesk  *desk)
{
  int old = find_grant (form->grants, form->old_id);
  g_autoptr(SteadFund) fund = form->old_id != 0 ? find_fund (store, form->old_id) : NULL;

  if (old >= 0 && g_array_index (form->grants, SteadBuildGrant, old).use_by != STEAD_DAY_NONE)
    stead_field_show_day (form->use_by, g_array_index (form->grants, SteadBuildGrant, old).use_by);
  if (fund != NULL && fund->purpose != NULL)
    stead_field_set_text (form->purpose, fund->purpose);
}

void
stead_grant_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     build_id,
                         gint64     fund_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  GArray *grants = stead_build_grant_repo_list (store, build_id, NULL);
  SteadForm *dialog;
  Form *form;
  int old;

  if (grants == NULL)
    return;
  form = g_new0 (Form, 1);
  form->build_id = build_id;
  form->old_id = fund_id;
  form->grants = grants;
  old = find_grant (grants, fund_id);
  dialog = stead_form_new (fund_id == 0 ? _("New grant") : _("Grant"), _("Save grant"),
                           fund_id != 0 ? _("Not for this build") : NULL, save_cb, remove_cb, form, form_free);
  stead_form_add_text (dialog, _("A grant is kept apart: it pays for what its giver allows, and for nothing else. Its money is entered in the cash book of Keep, or with “Received…” on a pledge."), "soft");
  add_choice (form, dialog, store);
  form->name = stead_form_add (dialog, desk, _("Name of the grant"), STEAD_FIELD_TEXT);
  form->part = stead_fund_add_part (dialog, _("It may be used for"), _("all of the build"),
                                    old < 0 ? STEAD_BUILD_PART_ANY : g_array_index (grants, SteadBuildGrant, old).part);
  form->use_by = stead_form_add (dialog, desk, _("To be spent by"), STEAD_FIELD_DAY);
  form->purpose = stead_form_add (dialog, desk, _("In the giver's words"), STEAD_FIELD_TEXT);
  show_grant (form, store, desk);
  choice_cb (form);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}
