/* stead-dose-view.c - one dose sheet: numbers that can be changed, and what they come to. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-dose-view.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

/* What a water change is made for. */
static const SteadWaterMeasure changed_for[] = {
  STEAD_WATER_NITRATE, STEAD_WATER_TAN, STEAD_WATER_NITRITE, STEAD_WATER_CONDUCTIVITY, STEAD_WATER_CHLORIDE,
};

struct _SteadDoseView
{
  GtkWidget               parent_instance;

  SteadDoseSheet          sheet;
  const SteadWaterAnswer *answer;    /* (nullable) */
  gint64                  water_id;  /* that the numbers are of */
  gint64                  test_id;
  gboolean                filling;

  GtkWidget              *box;
  GtkDropDown            *choice;    /* (nullable): the base, or what is to be brought down */
  SteadField             *volume, *now, *target, *beside;   /* (nullable) but for the first two */
  GtkLabel               *from, *sentence, *caution;
  SteadWhyBox            *whys;
};

G_DEFINE_FINAL_TYPE (SteadDoseView, stead_dose_view, GTK_TYPE_WIDGET)

static SteadWaterMeasure
present_measure (SteadDoseView *self)
{
  guint at = self->choice != NULL && self->sheet == STEAD_DOSE_CHANGE ? gtk_drop_down_get_selected (self->choice) : 0;

  return at < G_N_ELEMENTS (changed_for) ? changed_for[at] : STEAD_WATER_NITRATE;
}

static SteadWaterDose *
work_out (SteadDoseView      *self,
          const SteadDoseNumbers  *numbers,
          GError                 **error)
{
  switch (self->sheet)
    {
    case STEAD_DOSE_BASE:
      return stead_water_dose_base (self->answer, (SteadBase) gtk_drop_down_get_selected (self->choice), numbers, error);
    case STEAD_DOSE_SALT:
      return stead_water_dose_salt (self->answer, numbers, error);
    case STEAD_DOSE_CHANGE:
    default:
      return stead_water_dose_change (self->answer, present_measure (self), numbers, error);
    }
}

static void
show_dose (SteadDoseView   *self,
           const SteadWaterDose *dose)
{
  g_autoptr(GPtrArray) whys = g_ptr_array_new ();

  gtk_label_set_markup (self->sentence, dose->sentence);
  gtk_label_set_text (self->caution, dose->caution);
  gtk_widget_set_visible (GTK_WIDGET (self->caution), dose->amount > 0);
  g_ptr_array_add (whys, dose->why);
  stead_why_box_set (self->whys, whys);
  gtk_widget_show (GTK_WIDGET (self->whys));
}

/* A number that is missing is asked for where the dose would stand. */
static void
show_missing (SteadDoseView *self,
              const char         *message)
{
  gtk_label_set_text (self->sentence, message);
  gtk_widget_hide (GTK_WIDGET (self->caution));
  gtk_widget_hide (GTK_WIDGET (self->whys));
}

/* What stands in a field, without taking the focus from where one types; NAN: nothing,
 * or not a number. */
static double
peek (SteadField *field)
{
  double value = NAN;

  if (field == NULL || stead_field_is_empty (field)
      || !stead_number_parse (stead_field_get_text (field), &value, NULL))
    return NAN;
  return value;
}

static void
changed_cb (SteadDoseView *self)
{
  g_autoptr(SteadWaterDose) dose = NULL;
  g_autoptr(GError) error = NULL;
  SteadDoseNumbers numbers = { .now = peek (self->now), .target = peek (self->target), .beside = peek (self->beside) };
  const SteadUnit *unit;

  if (self->answer == NULL || self->filling)
    return;
  unit = stead_unit_default (STEAD_DIMENSION_VOLUME, self->answer->farm->units);
  if (stead_field_is_empty (self->volume)
      || !stead_quantity_parse (stead_field_get_text (self->volume), STEAD_DIMENSION_VOLUME, unit, &numbers.volume_l,
                                NULL, NULL))
    numbers.volume_l = NAN;
  dose = work_out (self, &numbers, &error);
  if (dose != NULL)
    show_dose (self, dose);
  else
    show_missing (self, error->message);
}

/* --- starting numbers --------------------------------------------------------------------- */

static void
put (SteadField *field,
     double      value,
     int         digits)
{
  g_autofree char *text = NULL;

  if (field == NULL)
    return;
  text = isnan (value) ? g_strdup ("") : stead_number_format (value, digits);
  stead_field_set_text (field, text);
}

static void
start (SteadDoseView *self)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_VOLUME, self->answer->farm->units);
  SteadDoseNumbers numbers;
  g_autofree char *day = NULL;
  g_autofree char *from = NULL;

  stead_water_dose_start (self->answer, self->sheet, present_measure (self), &numbers);
  self->filling = TRUE;
  stead_field_set_unit (self->volume, unit);
  put (self->volume, stead_quantity_from_base (numbers.volume_l, unit), 0);
  put (self->now, numbers.now, 2);
  put (self->target, numbers.target, 2);
  put (self->beside, numbers.beside, 2);
  self->filling = FALSE;
  if (numbers.day != STEAD_DAY_NONE)
    {
      day = stead_day_format (numbers.day, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: a day. */
      from = g_strdup_printf (_("From the test of %s; every number can be changed."), day);
    }
  gtk_label_set_text (self->from, from != NULL ? from : _("There is no test of it yet: type what you measured."));
  changed_cb (self);
}

static void
choice_cb (SteadDoseView *self)
{
  if (self->answer == NULL)
    return;
  if (self->sheet == STEAD_DOSE_CHANGE)
    start (self);
  else
    changed_cb (self);
}

void
stead_dose_view_show (SteadDoseView     *self,
                       const SteadWaterAnswer *answer)
{
  gint64 test_id;
  gboolean same;

  g_return_if_fail (STEAD_IS_DOSE_VIEW (self) && answer != NULL);

  test_id = answer->last != NULL ? answer->last->id : 0;
  same = self->answer != NULL && self->water_id == answer->water->id && self->test_id == test_id;
  self->answer = answer;
  self->water_id = answer->water->id;
  self->test_id = test_id;
  if (same)
    changed_cb (self);
  else
    start (self);
}

/* --- the parts -------------------------------------------------------------------------------- */

static GtkLabel *
add_label (SteadDoseView *self,
           const char         *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_use_markup (GTK_LABEL (label), FALSE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (self->box), label);
  return GTK_LABEL (label);
}

static SteadField *
add_field (SteadDoseView *self,
           GtkWidget          *fields,
           const char         *name,
           SteadFieldKind      kind)
{
  GtkWidget *field = stead_field_new (name, kind);

  g_signal_connect_swapped (field, "changed", G_CALLBACK (changed_cb), self);
  gtk_box_append (GTK_BOX (fields), field);
  return STEAD_FIELD (field);
}

static void
add_choice (SteadDoseView *self,
            GtkWidget          *fields,
            const char         *name,
            GtkStringList      *choices)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *label = gtk_label_new (name);

  self->choice = GTK_DROP_DOWN (gtk_drop_down_new (G_LIST_MODEL (choices), NULL));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), GTK_WIDGET (self->choice));
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (choice_cb), self);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->choice));
  gtk_box_append (GTK_BOX (fields), box);
}

static void
add_base_fields (SteadDoseView *self,
                 GtkWidget          *fields)
{
  GtkStringList *bases = gtk_string_list_new (NULL);

  for (int i = 0; i < STEAD_N_BASES; i++)
    gtk_string_list_append (bases, stead_base_name ((SteadBase) i));
  add_choice (self, fields, _("Base"), bases);
  self->volume = add_field (self, fields, _("Water"), STEAD_FIELD_QUANTITY);
  self->now = add_field (self, fields, _("Alkalinity now, mg/L"), STEAD_FIELD_NUMBER);
  self->target = add_field (self, fields, _("Wanted, mg/L"), STEAD_FIELD_NUMBER);
}

static void
add_salt_fields (SteadDoseView *self,
                 GtkWidget          *fields)
{
  self->volume = add_field (self, fields, _("Water"), STEAD_FIELD_QUANTITY);
  self->now = add_field (self, fields, _("Nitrite now, mg/L"), STEAD_FIELD_NUMBER);
  self->beside = add_field (self, fields, _("Chloride now, mg/L"), STEAD_FIELD_NUMBER);
}

static void
add_change_fields (SteadDoseView *self,
                   GtkWidget          *fields)
{
  GtkStringList *measures = gtk_string_list_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (changed_for); i++)
    gtk_string_list_append (measures, stead_water_measure_name (changed_for[i]));
  add_choice (self, fields, _("To bring down"), measures);
  self->volume = add_field (self, fields, _("Water"), STEAD_FIELD_QUANTITY);
  self->now = add_field (self, fields, _("Now"), STEAD_FIELD_NUMBER);
  self->target = add_field (self, fields, _("Wanted"), STEAD_FIELD_NUMBER);
  self->beside = add_field (self, fields, _("In the new water"), STEAD_FIELD_NUMBER);
}

static void
build (SteadDoseView *self)
{
  static const char * const titles[] = {
    [STEAD_DOSE_BASE] = N_("How much base for the alkalinity"),
    [STEAD_DOSE_SALT] = N_("How much salt against nitrite"),
    [STEAD_DOSE_CHANGE] = N_("How much water to change"),
  };
  GtkWidget *title = gtk_label_new (_(titles[self->sheet]));
  GtkWidget *fields = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_widget_set_layout_manager (fields, stead_wrap_layout_new ());
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "heading");
  gtk_box_append (GTK_BOX (self->box), title);
  self->from = add_label (self, "soft");
  gtk_box_append (GTK_BOX (self->box), fields);
  if (self->sheet == STEAD_DOSE_BASE)
    add_base_fields (self, fields);
  else if (self->sheet == STEAD_DOSE_SALT)
    add_salt_fields (self, fields);
  else
    add_change_fields (self, fields);
  self->sentence = add_label (self, NULL);
  self->caution = add_label (self, "caution");
  self->whys = STEAD_WHY_BOX (stead_why_box_new ());
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->whys));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}

static void
stead_dose_view_dispose (GObject *object)
{
  SteadDoseView *self = STEAD_DOSE_VIEW (object);

  self->answer = NULL;
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_dose_view_parent_class)->dispose (object);
}

static void
stead_dose_view_class_init (SteadDoseViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_dose_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_dose_view_init (SteadDoseView *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_dose_view_new (SteadDoseSheet sheet)
{
  SteadDoseView *self = g_object_new (STEAD_TYPE_DOSE_VIEW, NULL);

  self->sheet = sheet;
  build (self);
  return GTK_WIDGET (self);
}
