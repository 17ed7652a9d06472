/* stead-upkeep-dialog.c - what a build costs each year once it stands. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "store/stead-store-watch.h"

typedef struct
{
  SteadBuildUpkeep *upkeep;
  SteadField       *name, *quantity, *unit, *price;
  GtkCheckButton   *per_head;
} Form;

static void
form_free (gpointer data)
{
  stead_build_upkeep_free (((Form *) data)->upkeep);
  g_free (data);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadBuildUpkeep *upkeep = ((Form *) data)->upkeep;

  stead_store_watch_id (store, &upkeep->id);
  return stead_build_upkeep_repo_save (store, upkeep, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_build_upkeep_repo_delete (store, ((Form *) data)->upkeep->id, error);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadBuildUpkeep *upkeep = form->upkeep;
  const char *name = NULL;
  const char *unit = stead_field_get_text (form->unit);
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_number (form->quantity, 1, &upkeep->quantity);
  good &= stead_field_read_money (form->price, -1, &upkeep->price_cents);
  if (good && upkeep->price_cents < 0)
    {
      stead_field_set_error (form->price, _("Enter what one costs."));
      good = FALSE;
    }
  if (!good)
    return FALSE;
  g_free (upkeep->name);
  upkeep->name = g_strstrip (g_strdup (name));
  g_free (upkeep->unit);
  upkeep->unit = *unit != '\0' ? g_strdup (unit) : NULL;
  upkeep->per_head = gtk_check_button_get_active (form->per_head);
  if (stead_form_act (dialog, _("yearly cost"), save_act, form, error))
    return TRUE;
  return stead_form_fail_at (form->quantity, error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  return stead_form_act (dialog, _("a yearly cost less"), remove_act, data, error);
}

static SteadBuildUpkeep *
load_upkeep (SteadStore *store,
             gint64      build_id,
             gint64      id)
{
  g_autoptr(GPtrArray) upkeeps = stead_build_upkeep_repo_list (store, build_id, NULL);
  SteadBuildUpkeep *upkeep;

  for (guint i = 0; upkeeps != NULL && i < upkeeps->len; i++)
    if (((SteadBuildUpkeep *) upkeeps->pdata[i])->id == id)
      return g_ptr_array_steal_index (upkeeps, i);
  upkeep = stead_build_upkeep_new ();
  upkeep->build_id = build_id;
  return upkeep;
}

void
stead_upkeep_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id,
                          gint64     upkeep_id)
{
  Form *form = g_new0 (Form, 1);
  const SteadBuildUpkeep *upkeep;
  SteadForm *dialog;

  upkeep = form->upkeep = load_upkeep (stead_desk_get_store (desk), build_id, upkeep_id);
  dialog = stead_form_new (_("Yearly cost"), _("Save yearly cost"), upkeep->id != 0 ? _("Delete yearly cost") : NULL,
                           save_cb, remove_cb, form, form_free);
  form->name = stead_form_add (dialog, desk, _("What for"), STEAD_FIELD_TEXT);
  g_object_set (form->name, "hint", _("hay, feed, bedding, care"), NULL);
  form->quantity = stead_form_add (dialog, desk, _("How many a year"), STEAD_FIELD_NUMBER);
  form->unit = stead_form_add (dialog, desk, _("Measured in"), STEAD_FIELD_TEXT);
  g_object_set (form->unit, "hint", _("bales, bags, visits"), NULL);
  form->price = stead_form_add (dialog, desk, _("Price of one"), STEAD_FIELD_MONEY);
  form->per_head = stead_form_add_check (dialog, _("So many for each animal"), upkeep->per_head);
  if (upkeep->id != 0)
    {
      stead_field_set_text (form->name, upkeep->name);
      stead_field_show_number (form->quantity, upkeep->quantity);
      if (upkeep->unit != NULL)
        stead_field_set_text (form->unit, upkeep->unit);
      stead_field_show_money (form->price, upkeep->price_cents);
    }
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}
