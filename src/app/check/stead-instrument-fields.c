/* stead-instrument-fields.c - what is asked about an instrument: its name, its kind, its scale, how fine it is,
 * and where it hangs: a reading of that place is taken with it. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-instrument-fields.h"

#include "answer/stead-instruments-answer.h"
#include "app/keep/stead-pick.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-round.h"
#include "store/stead-place-repo.h"

struct _SteadInstrumentFields
{
  GtkWidget   parent_instance;

  SteadPick  *kind, *scale, *place;
  SteadField *name, *step, *error;
};

G_DEFINE_FINAL_TYPE (SteadInstrumentFields, stead_instrument_fields, GTK_TYPE_WIDGET)

static const char * const scales[] = { "dual", "F_only", "C_only" };

static gboolean
shows_warmth (SteadInstrumentKind kind)
{
  return kind != STEAD_INSTRUMENT_PH_METER && kind != STEAD_INSTRUMENT_STRIP;
}

/* What a step of the scale that is typed is in that of the store. */
static double
factor_of (SteadInstrumentKind kind,
           gboolean            us_units)
{
  return us_units && shows_warmth (kind) ? 1 / 1.8 : 1;
}

void
stead_instrument_fields_fill (SteadInstrumentFields *self,
                              SteadStore            *store)
{
  g_autoptr(GPtrArray) places = NULL;
  gint64 chosen;

  g_return_if_fail (STEAD_IS_INSTRUMENT_FIELDS (self));

  places = stead_place_repo_list (store, NULL);
  chosen = stead_pick_get (self->place);
  stead_pick_clear (self->place);
  stead_pick_append (self->place, 0, _("nowhere in particular"));
  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      stead_pick_append (self->place, place->id, place->name);
    }
  stead_pick_show (self->place, chosen);
}

void
stead_instrument_fields_clear (SteadInstrumentFields *self)
{
  g_return_if_fail (STEAD_IS_INSTRUMENT_FIELDS (self));

  stead_field_set_text (self->name, "");
  stead_field_set_text (self->step, "");
  stead_field_set_text (self->error, "");
  stead_pick_show (self->place, 0);
}

static void
show_number (SteadField *field,
             double      value)
{
  if (!isnan (value))
    stead_field_show_number (field, value);
}

void
stead_instrument_fields_show (SteadInstrumentFields *self,
                              const SteadInstrument *instrument,
                              gboolean               us_units)
{
  double factor = factor_of (instrument->kind, us_units);

  g_return_if_fail (STEAD_IS_INSTRUMENT_FIELDS (self));

  stead_instrument_fields_clear (self);
  stead_field_set_text (self->name, instrument->name);
  stead_pick_show (self->kind, instrument->kind + 1);
  stead_pick_show (self->scale, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    if (g_strcmp0 (instrument->scale, scales[i]) == 0)
      stead_pick_show (self->scale, (gint64) i + 1);
  show_number (self->step, instrument->step / factor);
  show_number (self->error, instrument->error / factor);
  stead_pick_show (self->place, instrument->place_id);
}

gboolean
stead_instrument_fields_read (SteadInstrumentFields *self,
                              SteadInstrument       *instrument,
                              gboolean               us_units)
{
  double step = NAN, off = NAN, factor;

  g_return_val_if_fail (STEAD_IS_INSTRUMENT_FIELDS (self), FALSE);

  if (stead_field_is_empty (self->name))
    {
      stead_instrument_fields_fail (self, _("Give it a name, for example “Probe 1”."));
      return FALSE;
    }
  if (!stead_field_read_number (self->step, NAN, &step) || !stead_field_read_number (self->error, NAN, &off))
    return FALSE;
  g_free (instrument->name);
  g_free (instrument->scale);
  instrument->name = g_strdup (stead_field_get_text (self->name));
  instrument->kind = (SteadInstrumentKind) (stead_pick_get (self->kind) - 1);
  instrument->scale = shows_warmth (instrument->kind) ? g_strdup (scales[stead_pick_get (self->scale) - 1]) : NULL;
  factor = factor_of (instrument->kind, us_units);
  instrument->step = stead_round_back (step * factor, instrument->step);
  instrument->error = stead_round_back (off * factor, instrument->error);
  instrument->place_id = stead_pick_get (self->place);
  return TRUE;
}

void
stead_instrument_fields_fail (SteadInstrumentFields *self,
                              const char            *text)
{
  g_return_if_fail (STEAD_IS_INSTRUMENT_FIELDS (self));

  stead_field_set_error (self->name, text);
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_instrument_fields_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_instrument_fields_parent_class)->dispose (object);
}

static void
stead_instrument_fields_class_init (SteadInstrumentFieldsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_instrument_fields_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static SteadField *
add_field (GtkWidget      *row,
           const char     *label,
           SteadFieldKind  kind,
           int             width)
{
  GtkWidget *field = stead_field_new (label, kind);

  gtk_widget_set_size_request (field, width, -1);
  gtk_box_append (GTK_BOX (row), field);
  return STEAD_FIELD (field);
}

static void
stead_instrument_fields_init (SteadInstrumentFields *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  self->name = add_field (row, _("Name of the instrument"), STEAD_FIELD_TEXT, 260);
  self->kind = STEAD_PICK (stead_pick_new (_("Kind of instrument")));
  for (int kind = STEAD_INSTRUMENT_PROBE; kind <= STEAD_INSTRUMENT_LOGGER; kind++)
    stead_pick_append (self->kind, kind + 1, stead_instrument_kind_name ((SteadInstrumentKind) kind));
  stead_pick_show (self->kind, 1);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->kind));
  self->scale = STEAD_PICK (stead_pick_new (_("Its scale")));
  stead_pick_append (self->scale, 1, _("Both °F and °C"));
  stead_pick_append (self->scale, 2, _("Only °F"));
  stead_pick_append (self->scale, 3, _("Only °C"));
  stead_pick_show (self->scale, 1);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->scale));
  self->step = add_field (row, _("Smallest step that it shows"), STEAD_FIELD_NUMBER, 260);
  self->error = add_field (row, _("Off by at most, plus or minus, as its maker says"), STEAD_FIELD_NUMBER, 380);
  self->place = STEAD_PICK (stead_pick_new (_("Where it hangs")));
  stead_pick_append (self->place, 0, _("nowhere in particular"));
  stead_pick_show (self->place, 0);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->place));
  gtk_widget_set_parent (row, GTK_WIDGET (self));
}

GtkWidget *
stead_instrument_fields_new (void)
{
  return g_object_new (STEAD_TYPE_INSTRUMENT_FIELDS, NULL);
}
