/* stead-class-charts.c - three small charts over the class: hours, skills, packets.
 *
 * One column a student, in the order of the table.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-class-charts.h"

#include "answer/stead-hours-answer.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-chart-area.h"
#include "app/stead-ui.h"
#include "draw/stead-small-columns.h"

#define CHART_HEIGHT 56

typedef enum
{
  CHART_HOURS,
  CHART_SKILLS,
  CHART_PACKETS,
  N_CHARTS
} Which;

typedef struct
{
  gint64  person_id;
  char   *name;
  double  values[N_CHARTS];
} Student;

typedef struct
{
  SteadClassCharts *owner;
  Which             which;
  GtkWidget        *area;
} Chart;

struct _SteadClassCharts
{
  GtkWidget  parent_instance;

  GPtrArray *students;         /* of Student */
  double     full[N_CHARTS];   /* what all could reach; 0: nothing */
  Chart      charts[N_CHARTS];
};

G_DEFINE_FINAL_TYPE (SteadClassCharts, stead_class_charts, GTK_TYPE_WIDGET)

static void
student_free (gpointer data)
{
  Student *student = data;

  g_free (student->name);
  g_free (student);
}

static char *
value_text (const SteadClassCharts *self,
            Which                   which,
            double                  value)
{
  if (which == CHART_HOURS)
    return stead_hours_words ((gint64) value);
  /* Translators: skills or sections of a packet, of how many. */
  return g_strdup_printf (C_("skills", "%1$d of %2$d"), (int) value, (int) self->full[which]);
}

/* --- drawing ------------------------------------------------------------------------------ */

/* Values are of the caller's making, so that nothing is kept. */
static SteadSmallColumns
columns_of (const Chart *chart,
            double      *values)
{
  static const SteadRole roles[] = { STEAD_ROLE_WATER, STEAD_ROLE_FISH, STEAD_ROLE_SAUCE };
  static const SteadPattern patterns[] = { STEAD_PATTERN_SOLID, STEAD_PATTERN_RISING, STEAD_PATTERN_FALLING };
  const SteadClassCharts *self = chart->owner;

  for (guint i = 0; i < self->students->len; i++)
    values[i] = ((const Student *) self->students->pdata[i])->values[chart->which];
  return (SteadSmallColumns) { values, (int) self->students->len, self->full[chart->which], roles[chart->which],
                               patterns[chart->which], NULL };
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  const Chart *chart = data;
  g_autofree double *values = g_new0 (double, chart->owner->students->len + 1);
  SteadSmallColumns columns = columns_of (chart, values);
  SteadSmallColumnsLayout layout;

  if (columns.n == 0)
    return;
  stead_small_columns_layout (cr, &columns, style, width, height, &layout);
  stead_small_columns_paint (cr, &columns, style, &layout);
}

/* "Maya R.: 51 h" */
static char *
words_of (const Chart *chart,
          int          i)
{
  const Student *student = chart->owner->students->pdata[i];
  g_autofree char *value = value_text (chart->owner, chart->which, student->values[chart->which]);

  /* Translators: a name, what he or she reached. */
  return g_strdup_printf (C_("hint in a chart", "%1$s: %2$s"), student->name, value);
}

static void
lay (const Chart             *chart,
     double                  *values,
     SteadSmallColumns       *columns,
     SteadSmallColumnsLayout *layout)
{
  g_autoptr(GtkSnapshot) none = gtk_snapshot_new ();
  graphene_rect_t box = GRAPHENE_RECT_INIT (0, 0, 1, 1);
  cairo_t *cr = gtk_snapshot_append_cairo (none, &box);
  SteadDrawStyle style;

  *columns = columns_of (chart, values);
  stead_chart_area_get_style (STEAD_CHART_AREA (chart->area), NULL, &style);
  stead_small_columns_layout (cr, columns, &style, gtk_widget_get_width (chart->area), gtk_widget_get_height (chart->area),
                              layout);
  cairo_destroy (cr);
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  const Chart *chart = data;
  g_autofree double *values = g_new0 (double, chart->owner->students->len + 1);
  SteadSmallColumns columns;
  SteadSmallColumnsLayout layout;
  int i;

  if (chart->owner->students->len == 0)
    return NULL;
  lay (chart, values, &columns, &layout);
  i = stead_small_columns_at (&columns, &layout, x);
  return i >= 0 ? words_of (chart, i) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  const Chart *chart = data;
  g_autofree double *values = g_new0 (double, chart->owner->students->len + 1);
  SteadSmallColumns columns;
  SteadSmallColumnsLayout layout;
  SteadBox box;

  if (index < 0 || index >= (int) chart->owner->students->len)
    return NULL;
  lay (chart, values, &columns, &layout);
  box = stead_small_columns_box (&columns, &layout, index);
  *x = box.x + box.width / 2;
  *y = box.y;
  return words_of (chart, index);
}

/* --- what is shown -------------------------------------------------------------------------- */

static void
describe (const Chart *chart)
{
  const char * const labels[] = { _("Hours of each student"), _("Skills of each student"),
                                  _("How much of each packet is there") };
  g_autoptr(GString) said = g_string_new (NULL);

  for (guint i = 0; i < chart->owner->students->len; i++)
    {
      g_autofree char *one = words_of (chart, (int) i);

      g_string_append_printf (said, i > 0 ? ", %s" : "%s", one);
    }
  stead_chart_area_describe (STEAD_CHART_AREA (chart->area), labels[chart->which], said->str);
  gtk_widget_queue_draw (chart->area);
}

void
stead_class_charts_show (SteadClassCharts       *self,
                         const SteadClassAnswer *answer)
{
  g_return_if_fail (STEAD_IS_CLASS_CHARTS (self));

  g_ptr_array_set_size (self->students, 0);
  self->full[CHART_SKILLS] = (double) answer->n_skills;
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadClassRow *row = answer->rows->pdata[i];
      Student *student;

      if (row->person->role != STEAD_PERSON_STUDENT)
        continue;
      student = g_new0 (Student, 1);
      student->person_id = row->person->id;
      student->name = g_strdup (row->person->name);
      student->values[CHART_HOURS] = (double) row->sums->minutes;
      student->values[CHART_SKILLS] = row->sums->n_skills;
      g_ptr_array_add (self->students, student);
    }
  gtk_widget_set_visible (GTK_WIDGET (self), self->students->len > 0);
  for (int i = 0; i < N_CHARTS; i++)
    describe (&self->charts[i]);
}

void
stead_class_charts_set_packet (SteadClassCharts *self,
                               gint64            person_id,
                               int               n_there,
                               int               n_all)
{
  g_return_if_fail (STEAD_IS_CLASS_CHARTS (self));

  self->full[CHART_PACKETS] = MAX (self->full[CHART_PACKETS], n_all);
  for (guint i = 0; i < self->students->len; i++)
    if (((const Student *) self->students->pdata[i])->person_id == person_id)
      ((Student *) self->students->pdata[i])->values[CHART_PACKETS] = n_there;
  describe (&self->charts[CHART_PACKETS]);
}

/* --- the widget ------------------------------------------------------------------------------ */

static void
stead_class_charts_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_class_charts_parent_class)->dispose (object);
}

static void
stead_class_charts_finalize (GObject *object)
{
  g_ptr_array_unref (STEAD_CLASS_CHARTS (object)->students);
  G_OBJECT_CLASS (stead_class_charts_parent_class)->finalize (object);
}

static void
stead_class_charts_class_init (SteadClassChartsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_class_charts_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_class_charts_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
make_chart (SteadClassCharts *self,
            Which             which,
            const char       *heading,
            const char       *file_name)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  Chart *chart = &self->charts[which];

  *chart = (Chart) { self, which, stead_chart_area_new () };
  stead_chart_area_set_paint (STEAD_CHART_AREA (chart->area), paint_cb, hint_cb, chart);
  stead_chart_area_set_step (STEAD_CHART_AREA (chart->area), step_cb);
  stead_chart_area_set_file_name (STEAD_CHART_AREA (chart->area), file_name);
  gtk_widget_set_size_request (chart->area, 160, CHART_HEIGHT);
  gtk_widget_set_hexpand (chart->area, TRUE);
  gtk_box_append (GTK_BOX (box), stead_make_label (heading, "soft"));
  gtk_box_append (GTK_BOX (box), chart->area);
  return box;
}

static void
stead_class_charts_init (SteadClassCharts *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);

  self->students = g_ptr_array_new_with_free_func (student_free);
  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  gtk_box_append (GTK_BOX (row), make_chart (self, CHART_HOURS, _("Hours of each student"), "class-hours"));
  gtk_box_append (GTK_BOX (row), make_chart (self, CHART_SKILLS, _("Skills of each student"), "class-skills"));
  gtk_box_append (GTK_BOX (row), make_chart (self, CHART_PACKETS, _("How much of each packet is there"), "class-packets"));
  gtk_widget_set_parent (row, GTK_WIDGET (self));
}

GtkWidget *
stead_class_charts_new (void)
{
  return g_object_new (STEAD_TYPE_CLASS_CHARTS, NULL);
}
