/* stead-fence-dialog.c - the fence of a build, its holes, and what is asked before digging. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-fund-dialogs.h"

typedef struct
{
  SteadBuild  *build;
  SteadPick   *fence, *bag;
  SteadField  *height, *spacing, *rows, *roll, *roll_width, *apron, *hole, *post, *depth, *frost;
  SteadField  *wire, *wood, *mix;
  SteadField  *dig, *notice, *called, *permit;
} Form;

static void
form_free (gpointer data)
{
  stead_build_free (((Form *) data)->build);
  g_free (data);
}

static SteadField *
add_share (SteadForm  *dialog,
           SteadDesk  *desk,
           const char *label,
           double      frac)
{
  SteadField *field = stead_form_add (dialog, desk, label, STEAD_FIELD_PERCENT);

  stead_field_show_number (field, frac);
  return field;
}

/* --- the fence ------------------------------------------------------------------------------ */

static gboolean
read_fence (Form *form)
{
  SteadBuild *b = form->build;
  const struct { SteadField *field; double *to; } fields[] = {
    { form->height, &b->height_m }, { form->spacing, &b->spacing_m }, { form->roll, &b->roll_m },
    { form->roll_width, &b->roll_width_m }, { form->apron, &b->apron_m }, { form->hole, &b->hole_m },
    { form->post, &b->post_m }, { form->depth, &b->depth_m },
  };
  gint64 rows = b->rows;
  gboolean good = TRUE;

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    good &= stead_field_read_quantity (fields[i].field, *fields[i].to, fields[i].to);
  good &= stead_field_read_quantity (form->frost, NAN, &b->frost_m);
  good &= stead_field_read_count (form->rows, b->rows, &rows);
  good &= stead_field_read_number (form->wire, b->wire_waste, &b->wire_waste);
  good &= stead_field_read_number (form->wood, b->wood_waste, &b->wood_waste);
  good &= stead_field_read_number (form->mix, b->mix_waste, &b->mix_waste);
  b->rows = (int) MIN (rows, 1000);
  b->bag_lb = (int) stead_pick_get (form->bag);
  if (b->kind == STEAD_BUILD_PEN)
    b->fence = (SteadBuildFence) (stead_pick_get (form->fence) - 1);
  return good;
}

static gboolean
fence_save (SteadForm  *dialog,
            gpointer    data,
            GError    **error)
{
  Form *form = data;

  if (!read_fence (form))
    return FALSE;
  if (form->build->post_m > form->build->hole_m)
    {
      stead_field_set_error (form->post, _("The post does not fit into its hole."));
      return FALSE;
    }
  return stead_fund_save_build (dialog, form->build, _("fence"), error);
}

static void
add_picks (Form      *form,
           SteadForm *dialog)
{
  const char *kinds[] = { _("woven wire"), _("boards"), _("electric wires"), _("no fence") };
  const int bags[] = { 40, 60, 80 };

  form->fence = stead_form_add_pick (dialog, _("Kind of fence"));
  for (int i = 0; i < 4; i++)
    stead_pick_append (form->fence, i + 1, kinds[i]);
  stead_pick_show (form->fence, (gint64) form->build->fence + 1);
  gtk_widget_set_sensitive (GTK_WIDGET (form->fence), form->build->kind == STEAD_BUILD_PEN);
  form->bag = stead_form_add_pick (dialog, _("Bags of concrete"));
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *text = g_strdup_printf (_("%d lb"), bags[i]);

      stead_pick_append (form->bag, bags[i], text);
    }
  stead_pick_show (form->bag, form->build->bag_lb);
}

void
stead_fence_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     build_id)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  SteadForm *dialog;
  Form *form;

  if (build == NULL)
    return;
  form = g_new0 (Form, 1);
  form->build = g_steal_pointer (&build);
  dialog = stead_form_new (_("Fence and holes"), _("Save fence"), NULL, fence_save, NULL, form, form_free);
  add_picks (form, dialog);
  form->height = stead_form_add_length (dialog, desk, _("Height"), form->build->height_m);
  form->spacing = stead_form_add_length (dialog, desk, _("Most between posts"), form->build->spacing_m);
  form->rows = stead_form_add (dialog, desk, _("Wires or boards above each other"), STEAD_FIELD_COUNT);
  stead_field_show_count (form->rows, form->build->rows);
  form->roll = stead_form_add_length (dialog, desk, _("Length of a roll"), form->build->roll_m);
  form->roll_width = stead_form_add_length (dialog, desk, _("Width of a roll of mesh"), form->build->roll_width_m);
  form->apron = stead_form_add_length (dialog, desk, _("Apron against digging animals"), form->build->apron_m);
  form->hole = stead_form_add_length (dialog, desk, _("Width of a post hole"), form->build->hole_m);
  form->post = stead_form_add_length (dialog, desk, _("Width of a post"), form->build->post_m);
  form->depth = stead_form_add_length (dialog, desk, _("Depth of a post hole"), form->build->depth_m);
  form->frost = stead_form_add_length (dialog, desk, _("The ground freezes to"), form->build->frost_m);
  g_object_set (form->frost, "hint", _("ask the building office"), NULL);
  form->wire = add_share (dialog, desk, _("Waste of wire"), form->build->wire_waste);
  form->wood = add_share (dialog, desk, _("Waste of wood"), form->build->wood_waste);
  form->mix = add_share (dialog, desk, _("Waste of concrete"), form->build->mix_waste);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}

/* --- before digging --------------------------------------------------------------------------- */

static gboolean
permit_save (SteadForm  *dialog,
             gpointer    data,
             GError    **error)
{
  Form *form = data;
  gint64 notice = form->build->notice_days;
  gboolean good = stead_field_read_day (form->dig, STEAD_DAY_NONE, &form->build->dig_on);

  good &= stead_field_read_count (form->notice, 2, &notice);
  good &= stead_field_read_day (form->called, STEAD_DAY_NONE, &form->build->called_on);
  good &= stead_field_read_day (form->permit, STEAD_DAY_NONE, &form->build->permit_on);
  if (!good)
    return FALSE;
  form->build->notice_days = (int) MIN (notice, 1000);
  return stead_fund_save_build (dialog, form->build, _("digging and permits"), error);
}

static SteadField *
add_day (SteadForm  *dialog,
         SteadDesk  *desk,
         const char *label,
         SteadDay    day)
{
  SteadField *field = stead_form_add (dialog, desk, label, STEAD_FIELD_DAY);

  if (day != STEAD_DAY_NONE)
    stead_field_show_day (field, day);
  return field;
}

void
stead_permit_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  SteadForm *dialog;
  Form *form;

  if (build == NULL)
    return;
  form = g_new0 (Form, 1);
  form->build = g_steal_pointer (&build);
  dialog = stead_form_new (_("Digging and permits"), _("Save days"), NULL, permit_save, NULL, form, form_free);
  stead_form_add_text (dialog, _("Before any hole is dug, have buried lines marked: call 811, two or three business days ahead by place. The call is free. Ask the school's facilities office first, then the building office. What needs no permit still has to follow the rules."), "caution");
  form->dig = add_day (dialog, desk, _("First day of digging"), form->build->dig_on);
  form->notice = stead_form_add (dialog, desk, _("Business days ahead"), STEAD_FIELD_COUNT);
  stead_field_show_count (form->notice, form->build->notice_days);
  form->called = add_day (dialog, desk, _("811 was called on"), form->build->called_on);
  form->permit = add_day (dialog, desk, _("The building office answered on"), form->build->permit_on);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}
