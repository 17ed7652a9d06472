/* stead-crop-form.c - the form of a crop's day: what was picked, how warm it was, plants lost.
 *
 * One press writes all of it in one step: the pick as a lot, the readings of the
 * thermometer, and an entry of the log.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-crop-form.h"

#include "answer/stead-crop-pick.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

#define RESOURCE STEAD_UI ("raise/stead-crop-form.ui")

struct _SteadCropForm
{
  GtkWidget    parent_instance;

  SteadDesk   *desk;
  gint64       crop_id;
  gint64       climate_id;   /* place of the thermometer; 0: outdoors */
  SteadDay     today;        /* for which the day was proposed */
  GPtrArray   *people;       /* of SteadPerson: what the drop-down offers after "not said" */

  GtkLabel    *form_title, *error;
  SteadField  *day, *picked, *grade, *thrown, *reason, *highest, *lowest, *lost, *note;
  GtkDropDown *person;
  GtkWidget   *person_label;
};

G_DEFINE_FINAL_TYPE (SteadCropForm, stead_crop_form, GTK_TYPE_WIDGET)

/* All that one press writes. */
typedef struct
{
  SteadPick       pick;
  SteadClimateDay climate;
  SteadCropEntry  entry;
} Day;

static gboolean
has_pick (const Day *day)
{
  return day->pick.good_kg > 0 || day->pick.lost_kg > 0;
}

static gboolean
has_climate (const Day *day)
{
  return !isnan (day->climate.min_c) || !isnan (day->climate.max_c);
}

/* The note goes with the pick, unless there is an entry to bear it. */
static gboolean
has_entry (const Day *day)
{
  return day->entry.lost > 0 || (day->entry.note != NULL && !has_pick (day));
}

static void
show_error (SteadCropForm *self,
            const char    *text)
{
  gtk_label_set_text (self->error, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->error), text != NULL);
}

/* (transfer none) (nullable) */
static const char *
text_of (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : stead_field_get_text (field);
}

static gint64
chosen_person (SteadCropForm *self)
{
  guint at = gtk_drop_down_get_selected (self->person);

  return at == 0 || at == GTK_INVALID_LIST_POSITION ? 0 : ((SteadPerson *) self->people->pdata[at - 1])->id;
}

/* The texts of @out are the fields' own. */
static gboolean
read_fields (SteadCropForm *self,
             Day           *out)
{
  SteadDay day = STEAD_DAY_NONE;
  gint64 lost = 0;
  double picked = 0, thrown = 0, highest = NAN, lowest = NAN;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &day);

  good &= stead_field_read_quantity (self->picked, 0, &picked);
  good &= stead_field_read_quantity (self->thrown, 0, &thrown);
  good &= stead_field_read_quantity (self->highest, NAN, &highest);
  good &= stead_field_read_quantity (self->lowest, NAN, &lowest);
  good &= stead_field_read_count (self->lost, 0, &lost);
  if (!good)
    return FALSE;
  *out = (Day) {
    .pick = { .crop_id = self->crop_id, .day = day, .good_kg = picked, .lost_kg = thrown,
              .reason = thrown > 0 ? text_of (self->reason) : NULL, .grade = text_of (self->grade),
              .note = lost > 0 ? NULL : text_of (self->note), .person_id = chosen_person (self) },
    .climate = { .place_id = self->climate_id, .day = day, .min_c = lowest, .max_c = highest,
                 .rh_frac = NAN, .light_mol = NAN, .person_id = chosen_person (self) },
    .entry = { .crop_id = self->crop_id, .day = day, .lost = (gint32) MIN (lost, G_MAXINT32),
               .reason = (char *) (lost > 0 ? text_of (self->reason) : NULL), .note = (char *) text_of (self->note),
               .person_id = chosen_person (self) },
  };
  return TRUE;
}

/* What can be told at its own field. */
static gboolean
check_fields (SteadCropForm *self,
              const Day     *day)
{
  SteadField *wrong = NULL;
  const char *message = NULL;

  if (!has_pick (day) && !has_climate (day) && !has_entry (day))
    {
      wrong = self->picked;
      message = _("Enter what was picked, a temperature, lost plants or a note.");
    }
  else if (day->pick.lost_kg > 0 && day->pick.reason == NULL)
    {
      wrong = self->reason;
      message = _("Say why it was thrown out, such as “cracked”.");
    }
  else if (day->climate.min_c > day->climate.max_c)
    {
      wrong = self->lowest;
      message = _("The lowest temperature of the day is above the highest. Check the two readings.");
    }
  if (wrong == NULL)
    return TRUE;
  stead_field_set_error (wrong, message);
  gtk_widget_grab_focus (GTK_WIDGET (wrong));
  return FALSE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  Day *day = data;

  return (!has_climate (day) || stead_climate_repo_save (store, &day->climate, TRUE, error))
         && (!has_entry (day) || stead_crop_repo_save_entry (store, &day->entry, error))
         && (!has_pick (day) || stead_crop_pick_save (store, &day->pick, error));
}

static char *
step_name (SteadCropForm *self,
           const Day     *day)
{
  if (has_pick (day))
    return stead_crop_pick_name (&day->pick, stead_desk_get_farm (self->desk)->units);
  return has_climate (day) ? stead_crop_climate_name (&day->climate) : stead_crop_entry_name (&day->entry);
}

static void
empty_fields (SteadCropForm *self)
{
  SteadField *fields[] = { self->picked, self->grade, self->thrown, self->reason, self->highest, self->lowest,
                           self->lost, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_set_text (fields[i], "");
  stead_field_show_day (self->day, self->today);
}

static void
record_cb (SteadCropForm *self)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;
  Day day;

  show_error (self, NULL);
  if (!read_fields (self, &day) || !check_fields (self, &day))
    return;
  step = step_name (self, &day);
  if (!stead_desk_act (self->desk, step, save_act, &day, &error))
    {
      show_error (self, error->message);
      return;
    }
  empty_fields (self);
  stead_crop_form_focus (self);
}

/* Keeps the person who was chosen: one student often enters several days. */
static void
fill_people (SteadCropForm *self,
             SteadStore    *store)
{
  gint64 chosen = self->people->len > 0 ? chosen_person (self) : 0;
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint at = 0;

  g_ptr_array_set_size (self->people, 0);
  gtk_string_list_append (names, _("not said"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      SteadPerson *person = people->pdata[i];

      if (person->left_on != STEAD_DAY_NONE)
        continue;
      gtk_string_list_append (names, person->name);
      g_ptr_array_add (self->people, g_steal_pointer (&people->pdata[i]));
      if (person->id == chosen)
        at = self->people->len;
    }
  gtk_drop_down_set_model (self->person, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->person, at);
}

static void
stead_crop_form_dispose (GObject *object)
{
  SteadCropForm *self = STEAD_CROP_FORM (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CROP_FORM);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_crop_form_parent_class)->dispose (object);
}

static void
stead_crop_form_class_init (SteadCropFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_crop_form_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, form_title);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, error);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, day);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, picked);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, grade);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, thrown);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, highest);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, lowest);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, lost);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, note);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, person);
  gtk_widget_class_bind_template_child (widget_class, SteadCropForm, person_label);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
}

/* One straight edge at the left of all entries. */
static void
share_width (SteadCropForm *self)
{
  g_autoptr(GtkSizeGroup) group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  SteadField *fields[] = { self->day, self->picked, self->grade, self->thrown, self->reason, self->highest,
                           self->lowest, self->lost, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_share_width (fields[i], group);
  gtk_size_group_add_widget (group, self->person_label);
}

static void
stead_crop_form_init (SteadCropForm *self)
{
  self->today = STEAD_DAY_NONE;
  self->people = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_person_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  share_width (self);
}

static void
set_units (SteadCropForm   *self,
           SteadUnitSystem  units)
{
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, units);
  const SteadUnit *degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units);

  stead_field_set_unit (self->picked, mass);
  stead_field_set_unit (self->thrown, mass);
  stead_field_set_unit (self->highest, degrees);
  stead_field_set_unit (self->lowest, degrees);
}

void
stead_crop_form_show (SteadCropForm         *self,
                      SteadDesk             *desk,
                      const SteadCropAnswer *answer)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay today = stead_store_get_today (store);
  gboolean same = self->crop_id == answer->crop->batch.id && self->today == today;
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_LONG);
  /* Translators: a date with its weekday follows */
  g_autofree char *title = g_strdup_printf (_("Today, %s"), day);

  g_return_if_fail (STEAD_IS_CROP_FORM (self));

  g_set_object (&self->desk, desk);
  self->crop_id = answer->crop->batch.id;
  self->climate_id = answer->crop->climate_id;
  self->today = today;
  gtk_label_set_text (self->form_title, title);
  stead_field_set_today (self->day, today);
  set_units (self, answer->farm->units);
  fill_people (self, store);
  if (same)
    return;
  empty_fields (self);
  show_error (self, NULL);
}

void
stead_crop_form_focus (SteadCropForm *self)
{
  g_return_if_fail (STEAD_IS_CROP_FORM (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->picked));
}
