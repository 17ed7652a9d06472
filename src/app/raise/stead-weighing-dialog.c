/* stead-weighing-dialog.c - some fish weighed: each by itself, or all together.
 *
 * Number, mean, spread and condition follow as one types.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-weighing-dialog.h"

#include "answer/stead-fish-text.h"
#include "app/stead-person-pick.h"
#include "app/raise/stead-sample-grid.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "store/stead-store-watch.h"

#define RESOURCE STEAD_UI ("raise/stead-weighing-dialog.ui")

struct _SteadWeighingDialog
{
  SteadDialog       parent_instance;

  SteadWeighing    *weighing;     /* as on file, or a new one */
  SteadUnitSystem   units;
  gboolean          filling;

  GtkToggleButton  *each, *together;
  GtkStack         *ways;
  SteadSampleGrid  *grid;
  SteadField       *day, *number, *total, *length, *note;
  GtkDropDown      *unit;
  GtkLabel         *figures;
  SteadPersonPick  *person;
  SteadWhyBox      *whys;
};

G_DEFINE_FINAL_TYPE (SteadWeighingDialog, stead_weighing_dialog, STEAD_TYPE_DIALOG)

/* What a scale shows; in the order of the list. */
static const char * const scale_units[] = { "g", "oz", "lb", "kg" };

static gboolean
is_single (SteadWeighingDialog *self)
{
  return gtk_toggle_button_get_active (self->each);
}

/* --- what is typed --------------------------------------------------------------------- */

/* What the fields say so far; a field that is wrong counts as empty. */
static SteadWeighing *
peek (SteadWeighingDialog *self)
{
  SteadWeighing *weighing = stead_weighing_new ();
  double number = NAN;

  weighing->batch_id = self->weighing->batch_id;
  if (is_single (self))
    {
      weighing->single = stead_sample_grid_read (self->grid, FALSE, NULL);
      stead_weighing_take_single (weighing);
      return weighing;
    }
  if (stead_number_parse (stead_field_get_text (self->number), &number, NULL) && number >= 1 && number <= 1e9)
    weighing->n = (gint64) number;
  if (!stead_quantity_parse (stead_field_get_text (self->total), STEAD_DIMENSION_MASS,
                             stead_unit_default (STEAD_DIMENSION_MASS, self->units), &weighing->total_kg, NULL, NULL))
    weighing->total_kg = 0;
  if (!stead_quantity_parse (stead_field_get_text (self->length), STEAD_DIMENSION_LENGTH,
                             stead_fish_length_unit (self->units), &weighing->length_cm, NULL, NULL))
    weighing->length_cm = NAN;
  weighing->length_cm *= 100;
  return weighing;
}

static void
typed_cb (SteadWeighingDialog *self)
{
  g_autoptr(SteadWeighing) typed = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *text = NULL;

  if (self->filling)
    return;
  typed = peek (self);
  text = stead_fish_text_sample (typed, self->units);
  gtk_label_set_text (self->figures, text[0] != '\0' ? text
                      : _("Weigh about 30 fish or a tenth of them, after a day without feed."));
  whys = stead_fish_text_sample_whys (typed, self->units);
  stead_why_box_set (self->whys, whys);
}

static void
unit_cb (SteadWeighingDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->unit);

  if (at < G_N_ELEMENTS (scale_units))
    stead_sample_grid_set_units (self->grid, stead_unit_by_id (scale_units[at]), stead_fish_length_unit (self->units));
  typed_cb (self);
}

static void
way_cb (SteadWeighingDialog *self)
{
  gtk_stack_set_visible_child_name (self->ways, is_single (self) ? "each" : "together");
  typed_cb (self);
}

/* --- reading and saving ------------------------------------------------------------------ */

static gboolean
read_single (SteadWeighingDialog  *self,
             SteadWeighing        *weighing,
             GError              **error)
{
  GArray *single = stead_sample_grid_read (self->grid, TRUE, error);

  if (single == NULL)
    return FALSE;
  if (single->len == 0)
    {
      g_array_unref (single);
      stead_dialog_show_error (STEAD_DIALOG (self), _("Enter the weight of each fish, one under the other."));
      stead_sample_grid_focus (self->grid);
      return FALSE;
    }
  g_clear_pointer (&weighing->single, g_array_unref);
  weighing->single = single;
  stead_weighing_take_single (weighing);
  return TRUE;
}

static gboolean
read_together (SteadWeighingDialog *self,
               SteadWeighing       *weighing)
{
  double length_m = NAN;
  gboolean good = stead_field_read_count (self->number, 0, &weighing->n);

  good &= stead_field_read_quantity (self->total, NAN, &weighing->total_kg);
  good &= stead_field_read_quantity (self->length, NAN, &length_m);
  if (!good)
    return FALSE;
  g_clear_pointer (&weighing->single, g_array_unref);
  weighing->sd_g = NAN;
  weighing->length_cm = length_m * 100;
  return TRUE;
}

static gboolean
read_fields (SteadWeighingDialog  *self,
             SteadWeighing        *weighing,
             GError              **error)
{
  gint64 person = stead_person_pick_get (self->person);

  if (!stead_field_read_day (self->day, STEAD_DAY_NONE, &weighing->day))
    return FALSE;
  if (is_single (self) ? !read_single (self, weighing, error) : !read_together (self, weighing))
    return FALSE;
  g_free (weighing->note);
  weighing->note = stead_field_is_empty (self->note) ? NULL : g_strdup (stead_field_get_text (self->note));
  weighing->person_id = person != 0 ? person : weighing->person_id;
  return TRUE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  SteadWeighing *weighing = data;

  stead_store_watch_id (store, &weighing->id);
  return stead_weighing_repo_save (store, weighing, error);
}

static gboolean
stead_weighing_dialog_save (SteadDialog *dialog,
                            GError     **error)
{
  SteadWeighingDialog *self = STEAD_WEIGHING_DIALOG (dialog);
  g_autofree char *name = NULL;

  if (!read_fields (self, self->weighing, error))
    return FALSE;
  name = stead_fish_weighing_name (self->weighing);
  return stead_desk_act (stead_dialog_get_desk (dialog), name, save_act, self->weighing, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_weighing_repo_delete (store, ((SteadWeighing *) data)->id, error);
}

static gboolean
stead_weighing_dialog_remove (SteadDialog *dialog,
                              GError     **error)
{
  SteadWeighingDialog *self = STEAD_WEIGHING_DIALOG (dialog);
  g_autofree char *name = stead_fish_weighing_name (self->weighing);
  g_autofree char *step = g_strdup_printf (_("deleting %s"), name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->weighing, error);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
choose_unit (SteadWeighingDialog *self,
             double               weight_g)
{
  const SteadUnit *unit = stead_fish_weight_unit (weight_g, self->units);

  for (guint i = 0; i < G_N_ELEMENTS (scale_units); i++)
    if (g_str_equal (unit->id, scale_units[i]))
      gtk_drop_down_set_selected (self->unit, i);
  unit_cb (self);
}

/* Weight of a fish as it stands, to choose the unit by. */
static double
present_weight (SteadWeighingDialog *self,
                SteadStore          *store)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  if (self->weighing->id != 0)
    return stead_weighing_mean_g (self->weighing);
  answer = stead_fish_answer_new_now (store, self->weighing->batch_id, NULL);
  return answer != NULL && !isnan (answer->mean_g.likely) ? answer->mean_g.likely : 0;
}

static void
show_weighing (SteadWeighingDialog *self,
               SteadStore          *store)
{
  const SteadWeighing *weighing = self->weighing;
  gboolean bulk = weighing->id != 0 && weighing->single == NULL;

  self->filling = TRUE;
  stead_field_set_unit (self->total, stead_unit_default (STEAD_DIMENSION_MASS, self->units));
  stead_field_set_unit (self->length, stead_fish_length_unit (self->units));
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, weighing->id != 0 ? weighing->day : stead_store_get_today (store));
  stead_field_set_text (self->note, weighing->note != NULL ? weighing->note : "");
  choose_unit (self, present_weight (self, store));
  gtk_toggle_button_set_active (bulk ? self->together : self->each, TRUE);
  if (bulk)
    {
      stead_field_show_count (self->number, weighing->n);
      stead_field_show_quantity (self->total, weighing->total_kg);
      if (!isnan (weighing->length_cm))
        stead_field_show_quantity (self->length, weighing->length_cm / 100);
    }
  stead_sample_grid_show (self->grid, weighing->single);
  stead_person_pick_fill (self->person, store);
  gtk_widget_set_visible (GTK_WIDGET (self->person), weighing->id == 0);
  self->filling = FALSE;
  way_cb (self);
}

static void
stead_weighing_dialog_dispose (GObject *object)
{
  SteadWeighingDialog *self = STEAD_WEIGHING_DIALOG (object);

  self->filling = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WEIGHING_DIALOG);
  g_clear_pointer (&self->weighing, stead_weighing_free);
  G_OBJECT_CLASS (stead_weighing_dialog_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadWeighingDialog, child)

static void
stead_weighing_dialog_class_init (SteadWeighingDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  g_type_ensure (STEAD_TYPE_SAMPLE_GRID);
  G_OBJECT_CLASS (klass)->dispose = stead_weighing_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_weighing_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_weighing_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (each);
  BIND (together);
  BIND (ways);
  BIND (grid);
  BIND (day);
  BIND (number);
  BIND (total);
  BIND (length);
  BIND (note);
  BIND (unit);
  BIND (figures);
  BIND (person);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
  gtk_widget_class_bind_template_callback (widget_class, unit_cb);
  gtk_widget_class_bind_template_callback (widget_class, way_cb);
}

static void
stead_weighing_dialog_init (SteadWeighingDialog *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  self->filling = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->figures))),
                              stead_why_box_new_folded (&self->whys), GTK_WIDGET (self->figures));
  for (guint i = 0; i < G_N_ELEMENTS (scale_units); i++)
    gtk_string_list_append (names, stead_unit_symbol (stead_unit_by_id (scale_units[i])));
  gtk_drop_down_set_model (self->unit, G_LIST_MODEL (names));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  self->filling = FALSE;
}

void
stead_weighing_dialog_show (GtkWidget *parent,
                            SteadDesk *desk,
                            gint64     batch_id,
                            gint64     weighing_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadWeighingDialog *self;
  g_autoptr(SteadWeighing) weighing = NULL;
  g_autoptr(GError) error = NULL;

  weighing = weighing_id > 0 ? stead_weighing_repo_get (store, weighing_id, &error) : stead_weighing_new ();
  if (weighing == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  weighing->batch_id = batch_id;
  self = g_object_new (STEAD_TYPE_WEIGHING_DIALOG, "title", weighing_id > 0 ? _("Change the weighing") : _("Weigh fish"),
                       "delete-label", weighing_id > 0 ? _("Delete the weighing") : NULL, NULL);
  self->weighing = g_steal_pointer (&weighing);
  self->units = stead_desk_get_farm (desk)->units;
  show_weighing (self, store);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  if (is_single (self))
    stead_sample_grid_focus (self->grid);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->number));
}
