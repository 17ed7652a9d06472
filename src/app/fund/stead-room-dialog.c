/* stead-room-dialog.c - by which allowance the room for an animal is judged. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-limits.h"
#include "answer/stead-rules.h"
#include "app/fund/stead-fund-dialogs.h"
#include "core/stead-us-units.h"

typedef struct
{
  SteadBuild *build;
  GPtrArray  *rows;      /* of SteadLimit, (transfer none), in the order of the choice after the usual one */
  SteadPick  *rule;
  SteadField *housed, *yard;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;

  stead_build_free (form->build);
  g_ptr_array_unref (form->rows);
  g_free (form);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  gint64 chosen = stead_pick_get (form->rule);
  gboolean good = stead_field_read_quantity (form->housed, NAN, &form->build->housed_each_m2);

  good &= stead_field_read_quantity (form->yard, NAN, &form->build->yard_each_m2);
  if (!good)
    return FALSE;
  g_free (form->build->housing);
  form->build->housing = chosen <= 1 ? NULL : g_strdup (((const SteadLimit *) form->rows->pdata[chosen - 2])->id);
  if (stead_fund_save_build (dialog, form->build, _("room for the animals"), error))
    return TRUE;
  return stead_form_fail_at (form->housed, error);
}

/* Each source's own figure for a roofed floor, or for its bounds. */
static void
add_rules (Form            *form,
           SteadUnitSystem  units)
{
  const SteadLimitTable *rules = stead_rules_get ();
  const char *animal = g_strcmp0 (form->build->animal, "sheep") == 0 ? "goat" : form->build->animal;

  stead_pick_append (form->rule, 1, _("the usual one for this animal"));
  for (guint i = 0; i < stead_limit_table_get_n_rows (rules); i++)
    {
      const SteadLimit *row = stead_limit_table_get_row (rules, i);
      g_autofree char *each = NULL;
      g_autofree char *text = NULL;

      if (!g_str_equal (row->process, "space") || g_strcmp0 (row->subject, animal) != 0 ||
          !g_str_equal (row->measure, "housed_area_per_head") || !g_str_equal (row->unit, "sqft"))
        continue;
      g_ptr_array_add (form->rows, (gpointer) row);
      each = stead_build_area_text (row->value * STEAD_SQUARE_FOOT_M2, units);
      /* Translators: room under a roof for one animal, and who says so. */
      text = g_strdup_printf (_("%s: %s"), each, row->source);
      stead_pick_append (form->rule, (gint64) form->rows->len + 1, text);
    }
}

static gint64
chosen_rule (const Form *form)
{
  for (guint i = 0; form->build->housing != NULL && i < form->rows->len; i++)
    if (g_str_equal (((const SteadLimit *) form->rows->pdata[i])->id, form->build->housing))
      return (gint64) i + 2;
  return 1;
}

static SteadField *
add_area (SteadForm  *dialog,
          SteadDesk  *desk,
          const char *label,
          double      m2)
{
  SteadField *field = stead_form_add (dialog, desk, label, STEAD_FIELD_QUANTITY);

  stead_field_set_unit (field, stead_unit_default (STEAD_DIMENSION_AREA, stead_desk_get_farm (desk)->units));
  if (!isnan (m2))
    stead_field_show_quantity (field, m2);
  return field;
}

void
stead_room_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     build_id)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  SteadForm *dialog;
  Form *form;

  if (build == NULL || build->animal == NULL)
    return;
  form = g_new0 (Form, 1);
  form->build = g_steal_pointer (&build);
  form->rows = g_ptr_array_new ();
  dialog = stead_form_new (_("Room for one animal"), _("Save room"), NULL, save_cb, NULL, form, form_free);
  stead_form_add_text (dialog, _("Sources do not agree. Choose one, or enter the figures that the extension office or a veterinarian gave you. They are floors, not aims."), "caution");
  form->rule = STEAD_PICK (stead_pick_new (_("Floor under a roof, by")));
  add_rules (form, stead_desk_get_farm (desk)->units);
  stead_pick_show (form->rule, chosen_rule (form));
  stead_form_add_widget (dialog, GTK_WIDGET (form->rule));
  form->housed = add_area (dialog, desk, _("Own figure: floor for one"), form->build->housed_each_m2);
  form->yard = add_area (dialog, desk, _("Own figure: yard for one"), form->build->yard_each_m2);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}
