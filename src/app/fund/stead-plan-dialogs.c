/* stead-plan-dialogs.c - corners, slope and gates of a build, typed. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-fund-dialogs.h"

/* Gates that a person can add at once. */
#define NEW_GATES 1

typedef struct
{
  SteadBuild *build;
  gboolean    is_square;   /* typed as length and width; else corner by corner */
  SteadField *length, *width;
  GPtrArray  *x, *y, *rise, *steps;   /* of SteadField */
} Sides;

static double
side_m (const SteadBuild *build,
        guint             i)
{
  const SteadBuildCorner *a = &g_array_index (build->corners, SteadBuildCorner, i);
  const SteadBuildCorner *b = &g_array_index (build->corners, SteadBuildCorner, (i + 1) % build->corners->len);

  return hypot (b->x_m - a->x_m, b->y_m - a->y_m);
}

static SteadUnitSystem
units_of (SteadDesk *desk)
{
  return stead_desk_get_farm (desk)->units;
}

/* --- sides -------------------------------------------------------------------------------- */

static void
sides_free (gpointer data)
{
  Sides *form = data;

  stead_build_free (form->build);
  g_ptr_array_unref (form->x);
  g_ptr_array_unref (form->y);
  g_ptr_array_unref (form->rise);
  g_ptr_array_unref (form->steps);
  g_free (form);
}

static gboolean
is_square (const SteadBuild *build)
{
  const SteadBuildCorner *c = (const SteadBuildCorner *) (gpointer) build->corners->data;

  return build->corners->len == 4 && c[0].x_m == 0 && c[0].y_m == 0 && c[1].y_m == 0 && c[3].x_m == 0 &&
         c[2].x_m == c[1].x_m && c[2].y_m == c[3].y_m && c[1].x_m > 0 && c[3].y_m > 0;
}

static gboolean
read_rectangle (Sides *form)
{
  SteadBuildCorner *c = (SteadBuildCorner *) (gpointer) form->build->corners->data;
  double length = c[1].x_m, width = c[3].y_m;
  gboolean good = stead_field_read_quantity (form->length, length, &length);

  good &= stead_field_read_quantity (form->width, width, &width);
  if (!good)
    return FALSE;
  c[1].x_m = c[2].x_m = length;
  c[2].y_m = c[3].y_m = width;
  return TRUE;
}

static gboolean
read_side (Sides *form,
           guint  i)
{
  SteadBuildCorner *corner = &g_array_index (form->build->corners, SteadBuildCorner, i);
  gint64 steps = 0;
  gboolean good = stead_field_read_quantity (form->rise->pdata[i], 0, &corner->rise_m);

  good &= stead_field_read_count (form->steps->pdata[i], 0, &steps);
  corner->steps = (int) MIN (steps, 1000);
  if (form->is_square)
    return good;
  good &= stead_field_read_quantity (form->x->pdata[i], corner->x_m, &corner->x_m);
  good &= stead_field_read_quantity (form->y->pdata[i], corner->y_m, &corner->y_m);
  return good;
}

static gboolean
sides_save (SteadForm  *dialog,
            gpointer    data,
            GError    **error)
{
  Sides *form = data;
  gboolean good = !form->is_square || read_rectangle (form);

  for (guint i = 0; i < form->build->corners->len; i++)
    good &= read_side (form, i);
  if (!good)
    return FALSE;
  if (stead_fund_save_build (dialog, form->build, _("sides"), error))
    return TRUE;
  return stead_form_fail_at (form->is_square ? form->length : form->x->pdata[0], error);
}

static void
add_side (Sides     *form,
          SteadForm *dialog,
          SteadDesk *desk,
          guint      i)
{
  const SteadBuildCorner *corner = &g_array_index (form->build->corners, SteadBuildCorner, i);
  g_autofree char *length = stead_build_length_text (side_m (form->build, i), units_of (desk));
  /* Translators: number of a side of a pen, and its length. */
  g_autofree char *rise = g_strdup_printf (_("Side %u (%s) rises by"), i + 1, length);
  g_autofree char *steps = g_strdup_printf (_("Level steps of side %u"), i + 1);
  SteadField *field;

  if (!form->is_square)
    {
      g_autofree char *x = g_strdup_printf (_("Corner %u, to the right"), i + 1);
      g_autofree char *y = g_strdup_printf (_("Corner %u, down the plan"), i + 1);

      g_ptr_array_add (form->x, stead_form_add_length (dialog, desk, x, corner->x_m));
      g_ptr_array_add (form->y, stead_form_add_length (dialog, desk, y, corner->y_m));
    }
  g_ptr_array_add (form->rise, stead_form_add_length (dialog, desk, rise, corner->rise_m));
  field = stead_form_add (dialog, desk, steps, STEAD_FIELD_COUNT);
  stead_field_show_count (field, corner->steps);
  g_ptr_array_add (form->steps, field);
}

void
stead_sides_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     build_id)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  SteadForm *dialog;
  Sides *form;

  if (build == NULL || build->corners->len < 3)
    return;
  form = g_new0 (Sides, 1);
  form->build = g_steal_pointer (&build);
  form->is_square = is_square (form->build);
  form->x = g_ptr_array_new ();
  form->y = g_ptr_array_new ();
  form->rise = g_ptr_array_new ();
  form->steps = g_ptr_array_new ();
  dialog = stead_form_new (_("Sides and slope"), _("Save sides"), NULL, sides_save, NULL, form, sides_free);
  stead_form_add_text (dialog, _("How much the ground rises along a side makes its wire longer. Where the fence goes up in level steps instead, enter how many: its posts get longer."), "soft");
  if (form->is_square)
    {
      form->length = stead_form_add_length (dialog, desk, _("Length"), side_m (form->build, 0));
      form->width = stead_form_add_length (dialog, desk, _("Width"), side_m (form->build, 1));
    }
  for (guint i = 0; i < form->build->corners->len; i++)
    add_side (form, dialog, desk, i);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}

/* --- gates -------------------------------------------------------------------------------- */

typedef struct
{
  SteadPick  *side;
  SteadField *offset, *width;
} GateRow;

typedef struct
{
  SteadBuild *build;
  GArray     *rows;      /* of GateRow */
} Gates;

static void
gates_free (gpointer data)
{
  Gates *form = data;

  stead_build_free (form->build);
  g_array_unref (form->rows);
  g_free (form);
}

/* A gate without a width is none. */
static gboolean
read_gate (Gates         *form,
           const GateRow *row)
{
  SteadFenceGate gate = { (gsize) (stead_pick_get (row->side) - 1), 0, 0 };
  double side = side_m (form->build, (guint) gate.side);

  if (!stead_field_read_quantity (row->offset, NAN, &gate.offset_m) ||
      !stead_field_read_quantity (row->width, 0, &gate.width_m))
    return FALSE;
  if (!(gate.width_m > 0))
    return TRUE;
  if (gate.width_m > side)
    {
      stead_field_set_error (row->width, _("This is wider than its side."));
      return FALSE;
    }
  if (isnan (gate.offset_m))
    gate.offset_m = (side - gate.width_m) / 2;
  if (gate.offset_m < 0 || gate.offset_m + gate.width_m > side + 1e-9)
    {
      stead_field_set_error (row->offset, _("There the gate reaches past its side."));
      return FALSE;
    }
  g_array_append_val (form->build->gates, gate);
  return TRUE;
}

static gboolean
gates_save (SteadForm  *dialog,
            gpointer    data,
            GError    **error)
{
  Gates *form = data;
  gboolean good = TRUE;

  g_array_set_size (form->build->gates, 0);
  for (guint i = 0; i < form->rows->len; i++)
    good &= read_gate (form, &g_array_index (form->rows, GateRow, i));
  if (!good)
    return FALSE;
  if (stead_fund_save_build (dialog, form->build, _("gates"), error))
    return TRUE;
  return stead_form_fail_at (g_array_index (form->rows, GateRow, 0).width, error);
}

static void
add_gate (Gates                *form,
          SteadForm            *dialog,
          SteadDesk            *desk,
          guint                 number,
          const SteadFenceGate *gate)
{
  g_autofree char *width = g_strdup_printf (_("Width of gate %u"), number);
  g_autofree char *side = g_strdup_printf (_("Side of gate %u"), number);
  g_autofree char *offset = g_strdup_printf (_("Gate %u, from its side's first corner"), number);
  GateRow row = { .width = stead_form_add (dialog, desk, width, STEAD_FIELD_QUANTITY) };

  row.side = stead_form_add_pick (dialog, side);
  for (guint i = 0; i < form->build->corners->len; i++)
    {
      g_autofree char *length = stead_build_length_text (side_m (form->build, i), units_of (desk));
      /* Translators: number of a side of a pen, and its length. */
      g_autofree char *text = g_strdup_printf (_("side %u, %s"), i + 1, length);

      stead_pick_append (row.side, (gint64) i + 1, text);
    }
  stead_pick_show (row.side, gate != NULL ? (gint64) gate->side + 1 : 1);
  row.offset = stead_form_add (dialog, desk, offset, STEAD_FIELD_QUANTITY);
  g_object_set (row.offset, "hint", _("in the middle"), NULL);
  if (gate != NULL)
    {
      stead_field_show_quantity (row.width, gate->width_m);
      stead_field_show_quantity (row.offset, gate->offset_m);
    }
  stead_form_skip (dialog);
  g_array_append_val (form->rows, row);
}

void
stead_gates_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     build_id)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  SteadForm *dialog;
  Gates *form;
  guint n;

  if (build == NULL || build->corners->len < 3)
    return;
  form = g_new0 (Gates, 1);
  form->build = g_steal_pointer (&build);
  form->rows = g_array_new (FALSE, FALSE, sizeof (GateRow));
  n = form->build->gates->len;
  dialog = stead_form_new (_("Gates"), _("Save gates"), NULL, gates_save, NULL, form, gates_free);
  stead_form_add_text (dialog, _("People need 4 ft, small machines 12 ft. A gate without a width is taken away. Put its rails on the outer face, and a latch that animals cannot lift."), "soft");
  for (guint i = 0; i < n + NEW_GATES; i++)
    add_gate (form, dialog, desk, i + 1, i < n ? &g_array_index (form->build->gates, SteadFenceGate, i) : NULL);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}
