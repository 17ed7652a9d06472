/* stead-build-end-dialog.c - a build that stands becomes a thing of the farm. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "core/stead-money.h"
#include "store/stead-build-buy-repo.h"

typedef struct
{
  gint64      build_id;
  SteadDay    day;
  double      life_years;
  SteadField *on, *life;
} Form;

static gboolean
finish_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  Form *form = data;

  return stead_build_repo_finish (store, form->build_id, form->day, form->life_years, error);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (dialog));
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  gboolean good = stead_field_read_day (form->on, today, &form->day);

  good &= stead_field_read_number (form->life, STEAD_BUILD_LIFE_YEARS, &form->life_years);
  if (good && form->day > today)
    {
      stead_field_set_error (form->on, _("It was finished today or before."));
      good = FALSE;
    }
  if (good && !(form->life_years > 0))
    {
      stead_field_set_error (form->life, _("Enter for how many years it will stand."));
      good = FALSE;
    }
  return good && stead_desk_act (desk, _("end of the build"), finish_act, form, error);
}

void
stead_build_end_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id)
{
  g_autoptr(SteadBuildAnswer) answer = stead_build_answer_new (stead_desk_get_store (desk), build_id, NULL);
  g_autofree char *spent = NULL;
  g_autofree char *text = NULL;
  SteadForm *dialog;
  Form *form;

  if (answer == NULL)
    return;
  form = g_new0 (Form, 1);
  form->build_id = build_id;
  spent = stead_money_format (answer->spent_cents, stead_desk_get_farm (desk)->currency);
  /* Translators: what was paid for a build. */
  text = g_strdup_printf (_("%s was paid for it. What was paid for things becomes a thing of the farm in Keep, and wears down over the years; what was given becomes another. Animals are no part of it. What is still open on the bill stays undone."), spent);
  dialog = stead_form_new (_("It stands"), _("Finish the build"), NULL, save_cb, NULL, form, g_free);
  stead_form_add_text (dialog, text, NULL);
  form->on = stead_form_add (dialog, desk, _("Finished on"), STEAD_FIELD_DAY);
  stead_field_show_day (form->on, stead_store_get_today (stead_desk_get_store (desk)));
  form->life = stead_form_add (dialog, desk, _("Years that it will stand"), STEAD_FIELD_NUMBER);
  stead_field_show_number (form->life, STEAD_BUILD_LIFE_YEARS);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->life));
}
