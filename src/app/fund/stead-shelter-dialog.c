/* stead-shelter-dialog.c - the shed of a pen: one slope, open in front. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-fund-dialogs.h"
#include "core/stead-us-units.h"

#define FT STEAD_FOOT_M

typedef struct
{
  SteadBuild  *build;
  SteadPick   *turn;
  SteadField  *wall, *depth, *front, *rear, *x, *y, *over_front, *over_rear, *end, *cover, *rafters, *posts, *post_depth;
  SteadField  *bed;
} Form;

static void
form_free (gpointer data)
{
  stead_build_free (((Form *) data)->build);
  g_free (data);
}

/* As in the worked case (build-and-records, case 2); a panel 36 in wide covers 33 in. */
static SteadBuildShelter
usual (void)
{
  return (SteadBuildShelter) { .x_m = FT, .y_m = FT, .wall_m = 12 * FT, .depth_m = 8 * FT, .front_m = 7 * FT,
                               .rear_m = 5 * FT, .overhang_front_m = FT, .overhang_rear_m = FT / 2, .end_m = FT / 2,
                               .cover_m = 2.75 * FT, .rafter_spacing_m = 2 * FT, .post_spacing_m = 8 * FT,
                               .post_depth_m = 3.5 * FT };
}

static gboolean
read_form (Form *form)
{
  SteadBuildShelter *s = &form->build->shelter;
  const struct { SteadField *field; double *to; } fields[] = {
    { form->wall, &s->wall_m }, { form->depth, &s->depth_m }, { form->front, &s->front_m }, { form->rear, &s->rear_m },
    { form->x, &s->x_m }, { form->y, &s->y_m }, { form->over_front, &s->overhang_front_m },
    { form->over_rear, &s->overhang_rear_m }, { form->end, &s->end_m }, { form->cover, &s->cover_m },
    { form->rafters, &s->rafter_spacing_m }, { form->posts, &s->post_spacing_m },
    { form->post_depth, &s->post_depth_m }, { form->bed, &form->build->bed_m },
  };
  gboolean good = TRUE;

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    good &= stead_field_read_quantity (fields[i].field, 0, fields[i].to);
  s->turn = (int) stead_pick_get (form->turn) - 1;
  return good;
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;

  if (!read_form (form))
    return FALSE;
  if (form->build->shelter.front_m < form->build->shelter.rear_m)
    {
      stead_field_set_error (form->rear, _("The roof falls to the rear: it is not higher than the front."));
      return FALSE;
    }
  form->build->has_shelter = TRUE;
  return stead_fund_save_build (dialog, form->build, _("shelter"), error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  Form *form = data;

  form->build->has_shelter = FALSE;
  return stead_fund_save_build (dialog, form->build, _("no shelter"), error);
}

static void
add_fields (Form      *form,
            SteadForm *dialog,
            SteadDesk *desk)
{
  const SteadBuildShelter *s = &form->build->shelter;
  const char *sides[] = { _("down the plan"), _("to the left"), _("up the plan"), _("to the right") };

  stead_form_add_text (dialog, _("A shed with one slope. Turn its open side away from the wind; the roof falls to the rear. Sizes have to be checked by a builder or the building office."), "caution");
  form->wall = stead_form_add_length (dialog, desk, _("Length of the shelter"), s->wall_m);
  form->depth = stead_form_add_length (dialog, desk, _("Depth of the shelter"), s->depth_m);
  form->front = stead_form_add_length (dialog, desk, _("Height in front"), s->front_m);
  form->rear = stead_form_add_length (dialog, desk, _("Height at the rear"), s->rear_m);
  form->x = stead_form_add_length (dialog, desk, _("Place, to the right"), s->x_m);
  form->y = stead_form_add_length (dialog, desk, _("Place, down the plan"), s->y_m);
  form->turn = stead_form_add_pick (dialog, _("Open side"));
  for (int i = 0; i < 4; i++)
    stead_pick_append (form->turn, i + 1, sides[i]);
  stead_pick_show (form->turn, s->turn + 1);
  form->bed = stead_form_add_length (dialog, desk, _("Depth of the bedding"), form->build->bed_m);
  form->over_front = stead_form_add_length (dialog, desk, _("Roof past the front"), s->overhang_front_m);
  form->over_rear = stead_form_add_length (dialog, desk, _("Roof past the rear"), s->overhang_rear_m);
  form->end = stead_form_add_length (dialog, desk, _("Roof past each end"), s->end_m);
  form->cover = stead_form_add_length (dialog, desk, _("What one roof panel covers"), s->cover_m);
  form->rafters = stead_form_add_length (dialog, desk, _("Between rafters"), s->rafter_spacing_m);
  form->posts = stead_form_add_length (dialog, desk, _("Between its posts"), s->post_spacing_m);
  form->post_depth = stead_form_add_length (dialog, desk, _("Its posts in the ground"), s->post_depth_m);
}

void
stead_shelter_dialog_show (GtkWidget *parent,
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
  if (!form->build->has_shelter)
    form->build->shelter = usual ();
  dialog = stead_form_new (_("Shelter"), _("Save shelter"), form->build->has_shelter ? _("Take the shelter away") : NULL,
                           save_cb, remove_cb, form, form_free);
  add_fields (form, dialog, desk);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->wall));
}
