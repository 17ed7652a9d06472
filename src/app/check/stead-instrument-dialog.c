/* stead-instrument-dialog.c - changes an instrument, takes it out of use, or deletes it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-instrument-dialog.h"

#include "app/check/stead-instrument-fields.h"
#include "app/stead-form.h"

typedef struct
{
  SteadInstrument       *instrument;
  SteadInstrumentFields *fields;
  GtkCheckButton        *retired;
  gboolean               us_units;
} Form;

static void
form_free (gpointer data)
{
  stead_instrument_free (((Form *) data)->instrument);
  g_free (data);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_instrument_repo_save (store, data, error);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadInstrument *instrument = form->instrument;
  gboolean retired = gtk_check_button_get_active (form->retired);
  g_autofree char *step = NULL;

  if (!stead_instrument_fields_read (form->fields, instrument, form->us_units))
    return FALSE;
  if (retired != (instrument->retired_on != STEAD_DAY_NONE))
    instrument->retired_on = retired ? stead_store_get_today (stead_form_get_store (dialog)) : STEAD_DAY_NONE;
  /* Translators: a step that can be undone; the name of a thermometer follows. */
  step = g_strdup_printf (_("the instrument “%s”"), instrument->name);
  return stead_form_act (dialog, step, save_act, instrument, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_instrument_repo_delete (store, ((SteadInstrument *) data)->id, error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  SteadInstrument *instrument = ((Form *) data)->instrument;
  /* Translators: a step that can be undone; the name of a thermometer follows. */
  g_autofree char *step = g_strdup_printf (_("deleting the instrument “%s”"), instrument->name);

  return stead_form_act (dialog, step, remove_act, instrument, error);
}

void
stead_instrument_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     instrument_id)
{
  g_autoptr(GError) error = NULL;
  SteadInstrument *instrument;
  SteadForm *dialog;
  Form *form;

  g_return_if_fail (STEAD_IS_DESK (desk));

  instrument = stead_instrument_repo_get (stead_desk_get_store (desk), instrument_id, &error);
  if (instrument == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  form = g_new0 (Form, 1);
  form->instrument = instrument;
  form->us_units = stead_desk_get_farm (desk)->units == STEAD_UNITS_US;
  dialog = stead_form_new (_("Instrument"), _("Save changes"), _("Delete the instrument"), save_cb, remove_cb,
                           form, form_free);
  form->fields = STEAD_INSTRUMENT_FIELDS (stead_instrument_fields_new ());
  stead_instrument_fields_fill (form->fields, stead_desk_get_store (desk));
  stead_instrument_fields_show (form->fields, instrument, form->us_units);
  stead_form_add_widget (dialog, GTK_WIDGET (form->fields));
  form->retired = stead_form_add_check (dialog, _("No longer in use; keep its history"),
                                        instrument->retired_on != STEAD_DAY_NONE);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}
