/* stead-climate-view.c - a crop's thermometer day by day, gaps among them.
 *
 * Every day since the crop began has a row, so that a gap is seen and can be typed
 * in where it is.  A cell that is edited becomes a changed copy of its day.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-climate-view.h"

#include "app/raise/stead-usual-year-dialog.h"
#include "app/stead-import-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"

#define RESOURCE STEAD_UI ("raise/stead-climate-view.ui")

/* Days that the table goes back at most. */
#define DAYS_MOST 400

struct _SteadClimateView
{
  GtkWidget           parent_instance;

  SteadDesk          *desk;
  gint64              crop_id;
  gint64              place_id;
  SteadDegreeDayRule  rule;
  SteadUnitSystem     units;

  GtkLabel           *about;
  GtkBox             *slot;
  GtkWidget          *remove;
  SteadTable         *table;
};

G_DEFINE_FINAL_TYPE (SteadClimateView, stead_climate_view, GTK_TYPE_WIDGET)

static const SteadClimateDay *
row_day (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static const SteadUnit *
degrees (SteadClimateView *self)
{
  return stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->units);
}

/* --- what the cells show ----------------------------------------------------- */

static char *
temp_text (SteadClimateView *self,
           double            temp_c)
{
  return isnan (temp_c) ? g_strdup ("–") : stead_quantity_format (temp_c, degrees (self));
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (row_day (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
highest_text (gpointer item,
              gpointer data)
{
  return temp_text (data, row_day (item)->max_c);
}

static char *
lowest_text (gpointer item,
             gpointer data)
{
  return temp_text (data, row_day (item)->min_c);
}

static char *
warmth_text (gpointer item,
             gpointer data)
{
  SteadClimateView *self = data;
  double sum_c = stead_degree_day (&self->rule, row_day (item)->max_c, row_day (item)->min_c);

  if (isnan (sum_c))
    return g_strdup ("–");
  return stead_number_format (self->units == STEAD_UNITS_US ? sum_c * STEAD_F_DAYS_PER_C_DAY : sum_c, 1);
}

static char *
humidity_text (gpointer item,
               gpointer data)
{
  double frac = row_day (item)->rh_frac;

  return isnan (frac) ? g_strdup ("–") : stead_words_percent (frac, 0);
}

static char *
light_text (gpointer item,
            gpointer data)
{
  double mol = row_day (item)->light_mol;

  return isnan (mol) ? g_strdup ("–") : stead_number_format (mol, 1);
}

static char *
note_text (gpointer item,
           gpointer data)
{
  const SteadClimateDay *day = row_day (item);

  if (day->id == 0)
    return g_strdup (_("no reading"));
  return g_strdup (day->note != NULL ? day->note : "");
}

/* --- editing ------------------------------------------------------------------ */

static SteadClimateDay *
copy_day (const SteadClimateDay *day)
{
  SteadClimateDay *copy = g_memdup2 (day, sizeof *day);

  copy->note = g_strdup (day->note);
  return copy;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_climate_repo_save (store, data, FALSE, error);
}

static gboolean
save_changed (SteadClimateView *self,
              SteadClimateDay  *day,
              GError          **error)
{
  g_autofree char *step = stead_crop_climate_name (day);

  return stead_desk_act (self->desk, step, save_act, day, error);
}

/* An empty cell, or its dash, is no reading. */
static gboolean
is_nothing (const char *text)
{
  g_autofree char *trimmed = g_strstrip (g_strdup (text));

  return trimmed[0] == '\0' || g_str_equal (trimmed, "–") || g_str_equal (trimmed, "-");
}

static gboolean
edit_temp (SteadClimateView *self,
           SteadClimateDay  *day,
           double           *temp_c,
           const char       *text,
           GError          **error)
{
  if (is_nothing (text))
    *temp_c = NAN;
  else if (!stead_quantity_parse (text, STEAD_DIMENSION_TEMPERATURE, degrees (self), temp_c, NULL, error))
    return FALSE;
  return save_changed (self, day, error);
}

static gboolean
highest_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadClimateDay) day = copy_day (row_day (item));

  return edit_temp (data, day, &day->max_c, text, error);
}

static gboolean
lowest_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadClimateDay) day = copy_day (row_day (item));

  return edit_temp (data, day, &day->min_c, text, error);
}

/* "70", "70 %" */
static gboolean
humidity_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadClimateDay) day = copy_day (row_day (item));
  g_autofree char *bare = g_strdelimit (g_strdup (text), "%", ' ');
  double percent = NAN;

  if (!is_nothing (text) && !stead_number_parse (g_strstrip (bare), &percent, error))
    return FALSE;
  day->rh_frac = percent / 100;
  return save_changed (data, day, error);
}

static gboolean
light_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadClimateDay) day = copy_day (row_day (item));

  day->light_mol = NAN;
  if (!is_nothing (text) && !stead_number_parse (text, &day->light_mol, error))
    return FALSE;
  return save_changed (data, day, error);
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = row_day (a)->day, y = row_day (b)->day;

  return (x > y) - (x < y);
}

static void
build_table (SteadClimateView *self)
{
  GtkWidget *table = stead_table_new (_("Days of the thermometer"));

  self->table = STEAD_TABLE (table);
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, _("Highest"), TRUE, FALSE, highest_text, highest_edit, NULL, self);
  stead_table_add_column (self->table, _("Lowest"), TRUE, FALSE, lowest_text, lowest_edit, NULL, self);
  stead_table_add_column (self->table, _("Degree days"), TRUE, FALSE, warmth_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Humidity"), TRUE, FALSE, humidity_text, humidity_edit, NULL, self);
  stead_table_add_column (self->table, _("Light, mol/m²"), TRUE, FALSE, light_text, light_edit, NULL, self);
  stead_table_add_column (self->table, _("Note"), FALSE, TRUE, note_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Days appear here once the crop has begun."));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->slot, table);
}

/* --- what the buttons do ------------------------------------------------------ */

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_climate_repo_delete (store, ((const SteadClimateDay *) data)->id, error);
}

static void
remove_cb (SteadClimateView *self)
{
  gpointer row = stead_table_get_selected (self->table);
  g_autofree char *name = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;

  if (row == NULL || row_day (row)->id == 0)
    {
      stead_desk_say (self->desk, _("Choose a day with a reading first."), FALSE);
      return;
    }
  name = stead_crop_climate_name (row_day (row));
  step = g_strdup_printf (_("deleting %s"), name);
  if (!stead_desk_act (self->desk, step, remove_act, (gpointer) row_day (row), &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
usual_cb (SteadClimateView *self)
{
  stead_usual_year_dialog_show (GTK_WIDGET (self), self->desk, self->place_id);
}

static void
import_cb (SteadClimateView *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_TEMPERATURES, self->crop_id);
}

/* --- showing ------------------------------------------------------------------- */

/* Newest first, a row for each day. */
static GPtrArray *
make_rows (SteadClimateView *self,
           const GPtrArray  *days,
           SteadDay          first,
           SteadDay          last)
{
  GPtrArray *rows = g_ptr_array_new ();
  guint at = days->len;

  for (SteadDay day = last; day >= first; day--)
    {
      const SteadClimateDay none = { .place_id = self->place_id, .day = day, .min_c = NAN, .max_c = NAN,
                                     .rh_frac = NAN, .light_mol = NAN };
      gboolean read = at > 0 && ((const SteadClimateDay *) days->pdata[at - 1])->day == day;

      g_ptr_array_add (rows, copy_day (read ? days->pdata[--at] : &none));
    }
  return rows;
}

void
stead_climate_view_show (SteadClimateView      *self,
                         SteadDesk             *desk,
                         const SteadCropAnswer *answer)
{
  SteadStore *store = stead_desk_get_store (desk);
  const SteadBatch *batch = &answer->crop->batch;
  SteadDay last = batch->ended_on != STEAD_DAY_NONE ? batch->ended_on : stead_store_get_today (store);
  SteadDay first = MAX (batch->started_on, last - DAYS_MOST + 1);
  g_autoptr(GPtrArray) days = NULL;
  g_autoptr(GListModel) model = NULL;
  g_autofree char *about = NULL;

  g_return_if_fail (STEAD_IS_CLIMATE_VIEW (self));

  g_set_object (&self->desk, desk);
  self->crop_id = batch->id;
  self->place_id = answer->crop->climate_id;
  self->rule = answer->rule;
  self->units = answer->farm->units;
  /* Translators: a place, or "outdoors". */
  about = g_strdup_printf (_("Thermometer: %s. Press Return on a cell to change it."), answer->thermometer);
  gtk_label_set_text (self->about, about);
  days = stead_climate_repo_list (store, self->place_id, first, last, NULL);
  if (days == NULL)
    return;
  model = stead_rows_from_array (make_rows (self, days, first, last), (GDestroyNotify) stead_climate_day_free);
  stead_table_set_model (self->table, model);
}

static void
stead_climate_view_dispose (GObject *object)
{
  SteadClimateView *self = STEAD_CLIMATE_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CLIMATE_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_climate_view_parent_class)->dispose (object);
}

static void
stead_climate_view_class_init (SteadClimateViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_climate_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadClimateView, about);
  gtk_widget_class_bind_template_child (widget_class, SteadClimateView, slot);
  gtk_widget_class_bind_template_child (widget_class, SteadClimateView, remove);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
  gtk_widget_class_bind_template_callback (widget_class, usual_cb);
  gtk_widget_class_bind_template_callback (widget_class, import_cb);
}

static void
stead_climate_view_init (SteadClimateView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  build_table (self);
}
