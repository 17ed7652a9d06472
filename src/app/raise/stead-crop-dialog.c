/* stead-crop-dialog.c - a crop and what is expected of it: new, or changed.
 *
 * Choosing what grows fills in what is usual of it.  The rules of the farm file are
 * told above the buttons; what a field alone can check, at the field.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-crop-dialog.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-crop-kind.h"
#include "core/stead-round.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-store-watch.h"

#define RESOURCE STEAD_UI ("raise/stead-crop-dialog.ui")

#define DEFAULT_CARE_MINUTES 10

struct _SteadCropDialog
{
  SteadDialog      parent_instance;

  SteadCrop       *crop;      /* as on file, or the proposal */
  SteadUnitSystem  units;
  GArray          *places;    /* of gint64: what the thermometer's drop-down offers after "outdoors" */
  gboolean         filling;   /* the fields are being set, nobody chose */

  SteadField      *name, *variety, *own_word, *plants, *sown, *set_out, *ripe, *area, *place, *cost, *care,
                  *yield, *weeks, *need, *base, *upper, *ended, *note;
  GtkDropDown     *crop_choice, *system, *thermometer, *method;
  GtkCheckButton  *gift;
  GtkLabel        *usual;
};

G_DEFINE_FINAL_TYPE (SteadCropDialog, stead_crop_dialog, STEAD_TYPE_DIALOG)

/* Degree days are typed in the farm's degrees. */
static double
need_factor (SteadCropDialog *self)
{
  return self->units == STEAD_UNITS_US ? STEAD_F_DAYS_PER_C_DAY : 1;
}

/* (nullable): a crop that the program knows */
static const SteadCropDefaults *
chosen_crop (SteadCropDialog *self)
{
  gsize n;
  const SteadCropDefaults *known = stead_crop_known (&n);
  guint at = gtk_drop_down_get_selected (self->crop_choice);

  return at < n ? &known[at] : NULL;
}

/* --- what is usual ------------------------------------------------------------ */

static void
say_usual (SteadCropDialog *self)
{
  const SteadCropDefaults *usual = chosen_crop (self);

  gtk_widget_set_visible (GTK_WIDGET (self->own_word), usual == NULL);
  gtk_label_set_text (self->usual,
                      usual != NULL && usual->has_source
                      ? _("Tomatoes: 1,000 to 1,800 degree days in °F (weather report, Rochester 2025); 20 to 25 lb a "
                          "plant and year with two crops (Oregon greenhouse questions). Your own years go first.")
                      : _("Starting figures without a source. Take what the seed packet, your extension office or "
                          "your own years say."));
}

static void
show_need (SteadCropDialog *self,
           double           need_c)
{
  double need = need_c * need_factor (self);
  g_autofree char *text = stead_number_format (need, 0);

  stead_field_show_as (self->need, text, need);
}

static void
fill_usual (SteadCropDialog         *self,
            const SteadCropDefaults *usual)
{
  stead_field_show_quantity (self->base, usual->base_c);
  stead_field_show_quantity (self->upper, usual->upper_c);
  show_need (self, usual->ripe_need);
  stead_field_show_quantity (self->yield, usual->yield_kg);
  stead_field_show_number (self->weeks, usual->pick_weeks);
}

static void
crop_cb (SteadCropDialog *self)
{
  const SteadCropDefaults *usual = chosen_crop (self);

  if (self->filling)
    return;
  if (usual != NULL)
    fill_usual (self, usual);
  say_usual (self);
}

/* --- saving -------------------------------------------------------------------- */

static void
read_texts (SteadCropDialog *self,
            SteadCrop       *crop,
            const char      *name)
{
  const SteadCropDefaults *usual = chosen_crop (self);
  gint64 place = 0;
  guint at = gtk_drop_down_get_selected (self->thermometer);

  if (at > 0 && at <= self->places->len)
    place = g_array_index (self->places, gint64, at - 1);
  crop->climate_id = place;
  crop->system = (SteadGrowSystem) gtk_drop_down_get_selected (self->system);
  crop->method = (SteadCropMethod) gtk_drop_down_get_selected (self->method);
  crop->is_gift = gtk_check_button_get_active (self->gift);
  g_free (crop->batch.name);
  crop->batch.name = g_strstrip (g_strdup (name));
  g_free (crop->batch.note);
  crop->batch.note = g_strdup (stead_field_get_text (self->note));
  g_free (crop->variety);
  crop->variety = stead_field_is_empty (self->variety) ? NULL : g_strstrip (g_strdup (stead_field_get_text (self->variety)));
  g_free (crop->crop);
  crop->crop = usual != NULL ? g_strdup (usual->id) : g_strstrip (g_strdup (stead_field_get_text (self->own_word)));
}

/* The log begins with the first of the two days. */
static void
set_start (SteadCrop *crop,
           SteadDay   today)
{
  SteadDay first = crop->sown_on;

  if (first == STEAD_DAY_NONE || (crop->set_out_on != STEAD_DAY_NONE && crop->set_out_on < first))
    first = crop->set_out_on;
  if (first != STEAD_DAY_NONE)
    crop->batch.started_on = MIN (first, today);
}

/* Reads all fields, so that each one that is wrong says so at once. */
static gboolean
read_fields (SteadCropDialog *self,
             SteadCrop       *crop)
{
  const char *name = NULL;
  double need = 0;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_count (self->plants, 0, &crop->plants);
  good &= stead_field_read_day (self->sown, STEAD_DAY_NONE, &crop->sown_on);
  good &= stead_field_read_day (self->set_out, STEAD_DAY_NONE, &crop->set_out_on);
  good &= stead_field_read_day (self->ripe, STEAD_DAY_NONE, &crop->first_ripe_on);
  good &= stead_field_read_quantity (self->area, NAN, &crop->area_m2);
  good &= stead_field_read_money (self->cost, 0, &crop->cost_cents);
  good &= stead_field_read_number (self->care, 0, &crop->batch.care_minutes_day);
  good &= stead_field_read_quantity (self->yield, NAN, &crop->yield_kg);
  good &= stead_field_read_number (self->weeks, NAN, &crop->pick_weeks);
  good &= stead_field_read_number (self->need, NAN, &need);
  good &= stead_field_read_quantity (self->base, NAN, &crop->base_c);
  good &= stead_field_read_quantity (self->upper, NAN, &crop->upper_c);
  good &= stead_field_read_day (self->ended, STEAD_DAY_NONE, &crop->batch.ended_on);
  if (!good)
    return FALSE;
  if (crop->sown_on == STEAD_DAY_NONE && crop->set_out_on == STEAD_DAY_NONE)
    {
      stead_field_set_error (self->set_out, _("Enter the day of sowing, or the day the plants are set out."));
      gtk_widget_grab_focus (GTK_WIDGET (self->set_out));
      return FALSE;
    }
  crop->ripe_need = stead_round_back (need / need_factor (self), crop->ripe_need);
  read_texts (self, crop, name);
  set_start (crop, stead_store_get_today (stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)))));
  return TRUE;
}

/* What is saved: the crop, and the name of its place as it was typed. */
typedef struct
{
  SteadCrop  *crop;
  const char *place;
  gboolean    own_thermometer;   /* a new bay gets the crop's thermometer too */
} Saving;

/* The place of that name, which is made if the farm does not have it yet; 0: no name. */
static gboolean
find_place (SteadStore  *store,
            const char  *name,
            gint64      *place_id,
            GError     **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);
  g_autofree char *trimmed = g_strstrip (g_strdup (name));
  g_autoptr(SteadPlaceFacts) made = NULL;

  if (places == NULL)
    return FALSE;
  *place_id = 0;
  if (trimmed[0] == '\0')
    return TRUE;
  for (guint i = 0; i < places->len; i++)
    {
      SteadPlaceFacts *place = places->pdata[i];

      if (g_strcmp0 (place->name, trimmed) == 0)
        {
          *place_id = place->id;
          return TRUE;
        }
    }
  made = g_new0 (SteadPlaceFacts, 1);
  made->name = g_steal_pointer (&trimmed);
  made->kind = STEAD_PLACE_BAY;
  made->area_m2 = NAN;
  if (!stead_place_repo_save (store, made, error))
    return FALSE;
  *place_id = made->id;
  return TRUE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Saving *saving = data;

  stead_store_watch_id (store, &saving->crop->batch.id);
  if (!find_place (store, saving->place, &saving->crop->batch.place_id, error))
    return FALSE;
  if (saving->own_thermometer)
    saving->crop->climate_id = saving->crop->batch.place_id;
  return stead_crop_repo_save (store, saving->crop, error);
}

static gboolean
stead_crop_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadCropDialog *self = STEAD_CROP_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  gboolean is_new = self->crop->batch.id == 0;
  guint own = self->places->len + 1;
  Saving saving = { self->crop, stead_field_get_text (self->place),
                    gtk_drop_down_get_selected (self->thermometer) == own };
  g_autofree char *step = NULL;

  if (!read_fields (self, self->crop))
    return FALSE;
  step = g_strdup_printf (is_new ? _("new crop %s") : _("changes to crop %s"), self->crop->batch.name);
  if (!stead_desk_act (desk, step, save_act, &saving, error))
    return FALSE;
  if (is_new)
    stead_desk_jump (desk, STEAD_TARGET_BATCH, self->crop->batch.id);
  return TRUE;
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_crop_repo_delete (store, ((SteadCrop *) data)->batch.id, error);
}

static gboolean
stead_crop_dialog_remove (SteadDialog *dialog,
                          GError     **error)
{
  SteadCropDialog *self = STEAD_CROP_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting crop %s"), self->crop->batch.name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->crop, error);
}

/* --- showing --------------------------------------------------------------------- */

static void
fill_crops (SteadCropDialog *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  gsize n;
  const SteadCropDefaults *known = stead_crop_known (&n);
  guint chosen = (guint) n;

  for (gsize i = 0; i < n; i++)
    {
      gtk_string_list_append (names, stead_crop_word (known[i].id));
      if (g_strcmp0 (known[i].id, self->crop->crop) == 0)
        chosen = (guint) i;
    }
  gtk_string_list_append (names, _("something else"));
  gtk_drop_down_set_model (self->crop_choice, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->crop_choice, chosen);
}

static void
fill_words (SteadCropDialog *self)
{
  const char *systems[] = { _("in soil"), _("in water, fed (hydroponic)"), _("in the fish's water (aquaponic)"), NULL };
  const char *methods[] = { _("plain average"), _("readings moved between base and upper"),
                            _("what is above upper taken off"), NULL };
  g_autoptr(GtkStringList) system_list = gtk_string_list_new (systems);
  g_autoptr(GtkStringList) method_list = gtk_string_list_new (methods);

  gtk_drop_down_set_model (self->system, G_LIST_MODEL (system_list));
  gtk_drop_down_set_selected (self->system, self->crop->system);
  gtk_drop_down_set_model (self->method, G_LIST_MODEL (method_list));
  gtk_drop_down_set_selected (self->method, self->crop->method);
}

/* Outdoors, the farm's bays, and the crop's own place, which may be typed just now. */
static void
fill_places (SteadCropDialog *self,
             SteadStore      *store)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  gtk_string_list_append (names, C_("thermometer", "outdoors"));
  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id == self->crop->batch.place_id)
        stead_field_set_text (self->place, place->name);
      if (place->kind != STEAD_PLACE_BAY && place->id != self->crop->climate_id)
        continue;
      gtk_string_list_append (names, place->name);
      g_array_append_val (self->places, place->id);
      if (place->id == self->crop->climate_id)
        chosen = self->places->len;
    }
  gtk_string_list_append (names, _("where the crop stands"));
  gtk_drop_down_set_model (self->thermometer, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->thermometer, self->crop->batch.id == 0 ? self->places->len + 1 : chosen);
}

static void
show_day (SteadField *field,
          SteadDay    day)
{
  if (day != STEAD_DAY_NONE)
    stead_field_show_day (field, day);
}

static void
show_crop (SteadCropDialog *self)
{
  const SteadCrop *crop = self->crop;

  stead_field_set_text (self->name, crop->batch.name != NULL ? crop->batch.name : "");
  stead_field_set_text (self->variety, crop->variety != NULL ? crop->variety : "");
  stead_field_set_text (self->own_word, stead_crop_defaults (crop->crop) == NULL ? crop->crop : "");
  stead_field_set_text (self->note, crop->batch.note != NULL ? crop->batch.note : "");
  show_day (self->sown, crop->sown_on);
  show_day (self->set_out, crop->set_out_on);
  show_day (self->ripe, crop->first_ripe_on);
  show_day (self->ended, crop->batch.ended_on);
  if (!isnan (crop->area_m2))
    stead_field_show_quantity (self->area, crop->area_m2);
  stead_field_show_number (self->care, crop->batch.care_minutes_day);
  stead_field_show_quantity (self->yield, crop->yield_kg);
  stead_field_show_number (self->weeks, crop->pick_weeks);
  show_need (self, crop->ripe_need);
  stead_field_show_quantity (self->base, crop->base_c);
  if (!isnan (crop->upper_c))
    stead_field_show_quantity (self->upper, crop->upper_c);
  gtk_check_button_set_active (self->gift, crop->is_gift);
  if (crop->batch.id == 0)
    return;
  stead_field_show_count (self->plants, crop->plants);
  stead_field_show_money (self->cost, crop->cost_cents);
}

static void
prepare_fields (SteadCropDialog *self,
                SteadDesk       *desk)
{
  const SteadFarm *farm = stead_desk_get_farm (desk);
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  SteadField *days[] = { self->sown, self->set_out, self->ripe, self->ended };

  self->units = farm->units;
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    stead_field_set_today (days[i], today);
  stead_field_set_currency (self->cost, farm->currency);
  stead_field_set_unit (self->area, stead_unit_default (STEAD_DIMENSION_AREA, farm->units));
  stead_field_set_unit (self->yield, stead_unit_default (STEAD_DIMENSION_MASS, farm->units));
  stead_field_set_unit (self->base, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units));
  stead_field_set_unit (self->upper, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, farm->units));
}

static void
stead_crop_dialog_dispose (GObject *object)
{
  SteadCropDialog *self = STEAD_CROP_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CROP_DIALOG);
  g_clear_pointer (&self->crop, stead_crop_free);
  g_clear_pointer (&self->places, g_array_unref);
  G_OBJECT_CLASS (stead_crop_dialog_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadCropDialog, child)

static void
stead_crop_dialog_class_init (SteadCropDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_crop_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_crop_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_crop_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (name);
  BIND (variety);
  BIND (own_word);
  BIND (plants);
  BIND (sown);
  BIND (set_out);
  BIND (ripe);
  BIND (area);
  BIND (place);
  BIND (cost);
  BIND (care);
  BIND (yield);
  BIND (weeks);
  BIND (need);
  BIND (base);
  BIND (upper);
  BIND (ended);
  BIND (note);
  BIND (crop_choice);
  BIND (system);
  BIND (thermometer);
  BIND (method);
  BIND (gift);
  BIND (usual);
  gtk_widget_class_bind_template_callback (widget_class, crop_cb);
}

static void
stead_crop_dialog_init (SteadCropDialog *self)
{
  self->places = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->filling = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_crop_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     crop_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(SteadCrop) crop = NULL;
  g_autoptr(GError) error = NULL;
  SteadCropDialog *self;

  g_return_if_fail (store != NULL);

  crop = crop_id > 0 ? stead_crop_repo_get (store, crop_id, &error) : stead_crop_new ();
  if (crop == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if (crop_id == 0)
    {
      crop->set_out_on = stead_store_get_today (store);
      crop->batch.care_minutes_day = DEFAULT_CARE_MINUTES;
    }
  self = g_object_new (STEAD_TYPE_CROP_DIALOG, "title", crop_id > 0 ? _("Change the crop") : _("New crop"),
                       "delete-label", crop_id > 0 ? _("Delete the crop and its log") : NULL, NULL);
  self->crop = g_steal_pointer (&crop);
  prepare_fields (self, desk);
  fill_crops (self);
  fill_words (self);
  fill_places (self, store);
  show_crop (self);
  say_usual (self);
  self->filling = FALSE;
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
