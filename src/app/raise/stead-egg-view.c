/* stead-egg-view.c - the grading of a flock's eggs: sheets, broken-out eggs, what they say. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-egg-view.h"

#include "answer/stead-egg-answer.h"
#include "app/raise/stead-grading-dialog.h"
#include "app/raise/stead-haugh-dialog.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

#define RESOURCE STEAD_UI ("raise/stead-egg-view.ui")

struct _SteadEggView
{
  GtkWidget    parent_instance;

  SteadDesk   *desk;
  gint64       flock_id;

  GtkLabel    *sentence, *advice, *caution;
  GtkBox      *gradings_slot, *samples_slot;
  SteadTable  *gradings, *samples;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadEggView, stead_egg_view, GTK_TYPE_WIDGET)

/* --- the sheets ---------------------------------------------------------------- */

static const SteadEggGrading *
grading_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static char *
grading_day_text (gpointer item,
                  gpointer data)
{
  return stead_day_format (grading_of (item)->day, STEAD_DAY_STYLE_SHORT);
}

/* @data: the class */
static char *
class_text (gpointer item,
            gpointer data)
{
  return stead_number_format (grading_of (item)->counts[GPOINTER_TO_INT (data)], 0);
}

static char *
taken_out_text (gpointer item,
                gpointer data)
{
  const SteadEggGrading *grading = grading_of (item);

  return stead_number_format ((double) grading->blood + grading->checked + grading->dirty, 0);
}

static char *
grading_note_text (gpointer item,
                   gpointer data)
{
  return g_strdup (grading_of (item)->note != NULL ? grading_of (item)->note : "");
}

static void
change_grading_cb (gpointer item,
                   gpointer data)
{
  SteadEggView *self = data;

  stead_grading_dialog_show (GTK_WIDGET (self), self->desk, self->flock_id, grading_of (item));
}

static void
build_gradings (SteadEggView *self)
{
  GtkWidget *table = stead_table_new (_("Grading sheets"));

  self->gradings = STEAD_TABLE (table);
  stead_table_add_column (self->gradings, _("Day"), FALSE, FALSE, grading_day_text, NULL, NULL, self);
  for (int class = STEAD_EGG_CLASS_JUMBO; class >= STEAD_EGG_CLASS_PEEWEE; class--)
    stead_table_add_column (self->gradings, stead_egg_class_name (class), TRUE, FALSE, class_text, NULL, NULL,
                            GINT_TO_POINTER (class));
  stead_table_add_column (self->gradings, _("Taken out"), TRUE, FALSE, taken_out_text, NULL, NULL, self);
  stead_table_add_column (self->gradings, _("Note"), FALSE, TRUE, grading_note_text, NULL, NULL, self);
  stead_table_set_empty (self->gradings, _("Sort a day's eggs by weight, hold them to the light, and enter the sheet."));
  stead_table_set_activate (self->gradings, change_grading_cb, self);
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->gradings_slot, table);
}

/* --- the eggs that were broken out ----------------------------------------------- */

/* With its Haugh units, which the answer worked out. */
typedef struct
{
  SteadEggSample sample;
  double         haugh;
} SampleRow;

static const SampleRow *
sample_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static char *
sample_day_text (gpointer item,
                 gpointer data)
{
  return stead_day_format (sample_of (item)->sample.day, STEAD_DAY_STYLE_SHORT);
}

static char *
weight_text (gpointer item,
             gpointer data)
{
  return stead_number_format (sample_of (item)->sample.egg_g, 1);
}

static char *
height_text (gpointer item,
             gpointer data)
{
  return stead_number_format (sample_of (item)->sample.albumen_mm, 1);
}

static char *
units_text (gpointer item,
            gpointer data)
{
  double haugh = sample_of (item)->haugh;

  return isnan (haugh) ? g_strdup ("–") : stead_number_format (haugh, 1);
}

static char *
grade_text (gpointer item,
            gpointer data)
{
  double haugh = sample_of (item)->haugh;

  return g_strdup (isnan (haugh) ? "–" : stead_egg_grade_name (stead_haugh_grade (haugh)));
}

static void
change_sample_cb (gpointer item,
                  gpointer data)
{
  SteadEggView *self = data;

  stead_haugh_dialog_show (GTK_WIDGET (self), self->desk, self->flock_id, &sample_of (item)->sample);
}

static void
build_samples (SteadEggView *self)
{
  GtkWidget *table = stead_table_new (_("Broken-out eggs"));

  self->samples = STEAD_TABLE (table);
  stead_table_add_column (self->samples, _("Day"), FALSE, FALSE, sample_day_text, NULL, NULL, self);
  stead_table_add_column (self->samples, _("Egg, g"), TRUE, FALSE, weight_text, NULL, NULL, self);
  stead_table_add_column (self->samples, _("White, mm"), TRUE, FALSE, height_text, NULL, NULL, self);
  stead_table_add_column (self->samples, _("Haugh units"), TRUE, FALSE, units_text, NULL, NULL, self);
  stead_table_add_column (self->samples, _("Grade"), FALSE, TRUE, grade_text, NULL, NULL, self);
  stead_table_set_empty (self->samples, _("Break out a few eggs each month to see how fresh they are."));
  stead_table_set_activate (self->samples, change_sample_cb, self);
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->samples_slot, table);
}

/* --- showing --------------------------------------------------------------------- */

static void
show_answer (SteadEggView   *self,
             SteadEggAnswer *answer)
{
  g_autoptr(GPtrArray) whys = stead_egg_answer_whys (answer);
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) gradings = NULL, samples = NULL;

  gtk_label_set_markup (self->sentence, answer->sentence);
  stead_ui_tell (self->advice, answer->advice);
  stead_ui_tell (self->caution, answer->caution);
  stead_why_box_set (self->whys, whys);
  for (guint i = 0; i < answer->samples->len; i++)
    {
      SampleRow row = { g_array_index (answer->samples, SteadEggSample, i), g_array_index (answer->haughs, double, i) };

      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
  samples = stead_rows_from_array (g_steal_pointer (&rows), g_free);
  g_ptr_array_set_free_func (answer->gradings, NULL);   /* the rows take the sheets over */
  gradings = stead_rows_from_array (g_steal_pointer (&answer->gradings), (GDestroyNotify) stead_egg_grading_free);
  stead_table_set_model (self->gradings, gradings);
  stead_table_set_model (self->samples, samples);
}

/**
 * stead_egg_view_show:
 * @flock_id: a flock of the open farm
 */
void
stead_egg_view_show (SteadEggView *self,
                     SteadDesk    *desk,
                     gint64        flock_id)
{
  g_autoptr(SteadEggAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_EGG_VIEW (self));

  g_set_object (&self->desk, desk);
  self->flock_id = flock_id;
  answer = stead_egg_answer_new (stead_desk_get_store (desk), flock_id, &error);
  if (answer == NULL)
    gtk_label_set_text (self->sentence, error->message);
  else
    show_answer (self, answer);
}

static void
grade_cb (SteadEggView *self)
{
  stead_grading_dialog_show (GTK_WIDGET (self), self->desk, self->flock_id, NULL);
}

static void
break_out_cb (SteadEggView *self)
{
  stead_haugh_dialog_show (GTK_WIDGET (self), self->desk, self->flock_id, NULL);
}

/* For the bench, where no computer stands. */
static void
sheet_cb (SteadEggView *self)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (stead_desk_get_store (self->desk), self->flock_id, NULL);

  if (flock != NULL)
    stead_paper_dialog_show (GTK_WIDGET (self), self->desk, "grading-sheet", flock->name);
}

static void
stead_egg_view_dispose (GObject *object)
{
  SteadEggView *self = STEAD_EGG_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_EGG_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_egg_view_parent_class)->dispose (object);
}

static void
stead_egg_view_class_init (SteadEggViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WHY_BOX);
  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_egg_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadEggView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadEggView, advice);
  gtk_widget_class_bind_template_child (widget_class, SteadEggView, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadEggView, gradings_slot);
  gtk_widget_class_bind_template_child (widget_class, SteadEggView, samples_slot);
  gtk_widget_class_bind_template_child (widget_class, SteadEggView, whys);
  gtk_widget_class_bind_template_callback (widget_class, grade_cb);
  gtk_widget_class_bind_template_callback (widget_class, break_out_cb);
  gtk_widget_class_bind_template_callback (widget_class, sheet_cb);
}

static void
stead_egg_view_init (SteadEggView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  build_gradings (self);
  build_samples (self);
}
