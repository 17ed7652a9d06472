/* stead-feeding-view.c - what feeds the plants: the fish on their water, two stocks, or a bag.
 *
 * A crop in the fish's water shows what the fish feed keeps, and no fertilizer: most
 * of it harms fish.  Any other shows the two sheets; nothing of them is kept.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app/raise/stead-feeding-view.h"

#include "answer/stead-nutrient-answer.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-husbandry.h"

/* What a sheet comes to. */
typedef struct
{
  GtkWidget   *box;
  GtkLabel    *sentence, *caution;
  SteadWhyBox *whys;
} Sheet;

struct _SteadFeedingView
{
  GtkWidget        parent_instance;

  gint64           crop_id;    /* that the numbers are of */
  SteadUnitSystem  units;
  gboolean         filling;

  GtkWidget       *scroll;
  GtkLabel        *fish, *fish_caution;
  Sheet            stocks, bag;
  SteadField      *stock_water, *now, *target, *label_parts, *label_adds;
  SteadField      *bag_water, *ppm, *share, *ratio;
};

G_DEFINE_FINAL_TYPE (SteadFeedingView, stead_feeding_view, GTK_TYPE_WIDGET)

/* --- reading, without taking the focus from where one types ------------------------- */

/* NAN: nothing, or not a number. */
static double
peek (SteadField *field)
{
  double value = NAN;

  if (stead_field_is_empty (field) || !stead_number_parse (stead_field_get_text (field), &value, NULL))
    return NAN;
  return value;
}

static double
peek_volume (SteadFeedingView *self,
             SteadField       *field)
{
  double volume_l = NAN;

  if (stead_field_is_empty (field)
      || !stead_quantity_parse (stead_field_get_text (field), STEAD_DIMENSION_VOLUME,
                                stead_unit_default (STEAD_DIMENSION_VOLUME, self->units), &volume_l, NULL, NULL))
    return NAN;
  return volume_l;
}

/* --- the sheets ---------------------------------------------------------------------- */

/* A number that is missing is asked for where the dose would stand. */
static void
show_dose (Sheet                   *sheet,
           const SteadNutrientDose *dose,     /* (nullable) */
           const char              *missing)
{
  g_autoptr(GPtrArray) whys = g_ptr_array_new ();
  gboolean given = dose != NULL && dose->amount > 0;

  if (dose != NULL)
    gtk_label_set_markup (sheet->sentence, dose->sentence);
  else
    gtk_label_set_text (sheet->sentence, missing);
  if (given)
    {
      gtk_label_set_text (sheet->caution, dose->caution);
      g_ptr_array_add (whys, dose->why);
      stead_why_box_set (sheet->whys, whys);
    }
  gtk_widget_set_visible (GTK_WIDGET (sheet->caution), given);
  gtk_widget_set_visible (GTK_WIDGET (sheet->whys), given);
}

static void
stocks_cb (SteadFeedingView *self)
{
  g_autoptr(SteadNutrientDose) dose = NULL;
  g_autoptr(GError) error = NULL;
  SteadStockNumbers numbers = { peek_volume (self, self->stock_water), peek (self->now), peek (self->target),
                                peek (self->label_parts), peek (self->label_adds) };

  if (self->filling)
    return;
  dose = stead_nutrient_thin (&numbers, self->units, &error);
  show_dose (&self->stocks, dose, error != NULL ? error->message : NULL);
}

static void
bag_cb (SteadFeedingView *self)
{
  g_autoptr(SteadNutrientDose) dose = NULL;
  g_autoptr(GError) error = NULL;
  SteadBagNumbers numbers = { peek (self->ppm), peek (self->share) / 100, peek_volume (self, self->bag_water),
                              peek (self->ratio) };

  if (self->filling)
    return;
  dose = stead_nutrient_weigh (&numbers, self->units, &error);
  show_dose (&self->bag, dose, error != NULL ? error->message : NULL);
}

/* --- showing a crop -------------------------------------------------------------------- */

static void
put (SteadField *field,
     double      value)
{
  g_autofree char *text = isnan (value) ? g_strdup ("") : stead_number_format (value, 0);

  stead_field_set_text (field, text);
}

/* Tomatoes start with a sourced feed; what a label says is only known from the label. */
static void
start (SteadFeedingView *self,
       const SteadCrop  *crop)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_VOLUME, self->units);
  gboolean tomato = strcmp (crop->crop, "tomato") == 0;

  self->filling = TRUE;
  stead_field_set_unit (self->stock_water, unit);
  stead_field_set_unit (self->bag_water, unit);
  put (self->stock_water, NAN);
  put (self->now, NAN);
  put (self->target, NAN);
  put (self->label_parts, NAN);
  put (self->label_adds, NAN);
  put (self->bag_water, NAN);
  put (self->ppm, tomato ? stead_husbandry_default (STEAD_DEFAULT_TOMATO_NITROGEN) : NAN);
  put (self->share, NAN);
  put (self->ratio, 1);
  self->filling = FALSE;
}

void
stead_feeding_view_show (SteadFeedingView      *self,
                         const SteadCropAnswer *answer)
{
  gboolean fish, same;

  g_return_if_fail (STEAD_IS_FEEDING_VIEW (self) && answer != NULL);

  fish = answer->crop->system == STEAD_GROW_AQUAPONIC;
  same = self->crop_id == answer->crop->batch.id && self->units == answer->farm->units;
  self->crop_id = answer->crop->batch.id;
  self->units = answer->farm->units;
  gtk_label_set_markup (self->fish, answer->feeding != NULL ? answer->feeding : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fish), answer->feeding != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->fish_caution), answer->feeding != NULL);
  gtk_widget_set_visible (self->stocks.box, !fish);
  gtk_widget_set_visible (self->bag.box, !fish);
  if (!same)
    start (self, answer->crop);
  stocks_cb (self);
  bag_cb (self);
}

/* --- the parts ----------------------------------------------------------------------------- */

static GtkLabel *
add_label (GtkWidget  *box,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

/* Returns: where the fields go */
static GtkWidget *
build_sheet (Sheet      *sheet,
             GtkWidget  *box,
             const char *title)
{
  GtkWidget *fields = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkLabel *heading;

  sheet->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  heading = add_label (sheet->box, "heading");
  gtk_label_set_text (heading, title);
  gtk_widget_set_layout_manager (fields, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (sheet->box), fields);
  sheet->sentence = add_label (sheet->box, NULL);
  sheet->caution = add_label (sheet->box, "caution");
  sheet->whys = STEAD_WHY_BOX (stead_why_box_new ());
  gtk_box_append (GTK_BOX (sheet->box), GTK_WIDGET (sheet->whys));
  gtk_box_append (GTK_BOX (box), sheet->box);
  return fields;
}

static SteadField *
add_field (SteadFeedingView *self,
           GtkWidget        *fields,
           const char       *name,
           SteadFieldKind    kind,
           void            (*changed) (SteadFeedingView *self))
{
  GtkWidget *field = stead_field_new (name, kind);

  /* The layout sets them as close as buttons, and their labels would run together. */
  gtk_widget_set_margin_end (field, 6);
  g_signal_connect_swapped (field, "changed", G_CALLBACK (changed), self);
  gtk_box_append (GTK_BOX (fields), field);
  return STEAD_FIELD (field);
}

static void
build (SteadFeedingView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *fields;

  self->fish = add_label (box, NULL);
  self->fish_caution = add_label (box, "caution");
  gtk_label_set_text (self->fish_caution, _("Put no plant fertilizer into water with fish: most of it harms them. What "
                                            "plants lack there, ask your extension office."));
  fields = build_sheet (&self->stocks, box, _("How much of stock A and stock B"));
  self->stock_water = add_field (self, fields, _("Nutrient solution wanted"), STEAD_FIELD_QUANTITY, stocks_cb);
  self->now = add_field (self, fields, _("Conductivity now, µS/cm"), STEAD_FIELD_NUMBER, stocks_cb);
  self->target = add_field (self, fields, _("Conductivity wanted, µS/cm"), STEAD_FIELD_NUMBER, stocks_cb);
  self->label_parts = add_field (self, fields, _("Label: one part of each in"), STEAD_FIELD_NUMBER, stocks_cb);
  self->label_adds = add_field (self, fields, _("That adds, µS/cm"), STEAD_FIELD_NUMBER, stocks_cb);
  fields = build_sheet (&self->bag, box, _("How much fertilizer from a bag"));
  self->bag_water = add_field (self, fields, _("Water in the tank"), STEAD_FIELD_QUANTITY, bag_cb);
  self->ppm = add_field (self, fields, _("Nutrient wanted, ppm"), STEAD_FIELD_NUMBER, bag_cb);
  self->share = add_field (self, fields, _("Nutrient in the bag, %"), STEAD_FIELD_NUMBER, bag_cb);
  self->ratio = add_field (self, fields, _("Injector, one in"), STEAD_FIELD_NUMBER, bag_cb);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroll), box);
}

static void
stead_feeding_view_dispose (GObject *object)
{
  SteadFeedingView *self = STEAD_FEEDING_VIEW (object);

  self->filling = TRUE;
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_feeding_view_parent_class)->dispose (object);
}

static void
stead_feeding_view_class_init (SteadFeedingViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_feeding_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_feeding_view_init (SteadFeedingView *self)
{
  self->scroll = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroll), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_parent (self->scroll, GTK_WIDGET (self));
  build (self);
}
