/* stead-usual-year-dialog.c - the usual year of a thermometer: a lowest and a highest a month. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-usual-year-dialog.h"

#include "app/raise/stead-month-words.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-usual-year-dialog.ui")

struct _SteadUsualYearDialog
{
  SteadDialog  parent_instance;

  gint64       place_id;
  GtkGrid     *grid;
  SteadField  *lowest[12], *highest[12];
};

G_DEFINE_FINAL_TYPE (SteadUsualYearDialog, stead_usual_year_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  gint64         place_id;
  SteadUsualYear year;
} Saving;

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Saving *saving = data;

  return stead_climate_repo_set_usual (store, saving->place_id, &saving->year, error);
}

static gboolean
stead_usual_year_dialog_save (SteadDialog *dialog,
                              GError     **error)
{
  SteadUsualYearDialog *self = STEAD_USUAL_YEAR_DIALOG (dialog);
  Saving saving = { .place_id = self->place_id };
  gboolean good = TRUE;

  for (int i = 0; i < 12; i++)
    {
      good &= stead_field_read_quantity (self->lowest[i], NAN, &saving.year.min_c[i]);
      good &= stead_field_read_quantity (self->highest[i], NAN, &saving.year.max_c[i]);
    }
  return good && stead_desk_act (stead_dialog_get_desk (dialog), _("a usual year"), save_act, &saving, error);
}

/* Two fields a month, six months a column. */
static SteadField *
add_field (SteadUsualYearDialog *self,
           gboolean              highest,
           int                   month)
{
  const char *name = stead_month_words (month);
  /* Translators: in both, the name of a month. */
  g_autofree char *label = highest ? g_strdup_printf (_("%s, highest"), name)
                                   : g_strdup_printf (_("%s, lowest"), name);
  GtkWidget *field = stead_field_new (label, STEAD_FIELD_QUANTITY);

  gtk_widget_set_hexpand (field, TRUE);
  gtk_grid_attach (self->grid, field, (highest ? 1 : 0) + 2 * (month / 6), month % 6, 1, 1);
  return STEAD_FIELD (field);
}

static void
stead_usual_year_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_USUAL_YEAR_DIALOG);
  G_OBJECT_CLASS (stead_usual_year_dialog_parent_class)->dispose (object);
}

static void
stead_usual_year_dialog_class_init (SteadUsualYearDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_usual_year_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_usual_year_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadUsualYearDialog, grid);
}

static void
stead_usual_year_dialog_init (SteadUsualYearDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (int i = 0; i < 12; i++)
    {
      self->lowest[i] = add_field (self, FALSE, i);
      self->highest[i] = add_field (self, TRUE, i);
    }
}

static void
show_temp (SteadField      *field,
           const SteadUnit *unit,
           double           temp_c)
{
  stead_field_set_unit (field, unit);
  if (!isnan (temp_c))
    stead_field_show_quantity (field, temp_c);
}

void
stead_usual_year_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     place_id)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (desk)->units);
  g_autoptr(GError) error = NULL;
  SteadUsualYearDialog *self;
  SteadUsualYear year;

  if (!stead_climate_repo_usual (stead_desk_get_store (desk), place_id, &year, &error))
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_USUAL_YEAR_DIALOG, "title",
                       place_id == 0 ? _("Usual year outdoors: means of each month")
                                     : _("Usual year of this thermometer: means of each month"), NULL);
  self->place_id = place_id;
  for (int i = 0; i < 12; i++)
    {
      show_temp (self->lowest[i], unit, year.min_c[i]);
      show_temp (self->highest[i], unit, year.max_c[i]);
    }
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->lowest[0]));
}
