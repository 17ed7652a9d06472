/* stead-water-log.c - the tests of a water as a table that can be edited.
 *
 * A cell that is edited becomes a changed copy of its test, which the farm file
 * checks as it checks a new one; what it refuses is told in the cell.  Cells show
 * the unit that stands in the head of their column.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-water-log.h"

#include "answer/stead-reading-unit.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "core/stead-clock.h"
#include "store/stead-farm-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-water-log.ui")

/* What the text and edit functions of one column get. */
typedef struct
{
  SteadWaterLog *log;
  SteadReading   reading;
} Column;

struct _SteadWaterLog
{
  GtkWidget               parent_instance;

  SteadDesk              *desk;
  const SteadWaterAnswer *answer;
  GHashTable             *people;      /* id → name */
  Column                  columns[STEAD_N_READINGS];

  GtkBox                 *log_slot;
  SteadTable             *table;       /* (nullable): made for the farm's units */
  int                     units;       /* of the farm that it was made for; -1 */
};

G_DEFINE_FINAL_TYPE (SteadWaterLog, stead_water_log, GTK_TYPE_WIDGET)

static const SteadWaterTest *
row_test (gpointer item)
{
  return stead_row_get (item);
}

static const SteadReadingUnit *
unit_of (const Column *column)
{
  return stead_reading_unit_default (column->reading, (SteadUnitSystem) column->log->units);
}

/* --- what the cells show ------------------------------------------------------------- */

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (row_test (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
time_text (gpointer item,
           gpointer data)
{
  return stead_minute_format (row_test (item)->minute);
}

static char *
reading_text (gpointer item,
              gpointer data)
{
  const Column *column = data;
  double kept = row_test (item)->values[column->reading];
  const SteadReadingUnit *unit = unit_of (column);

  if (isnan (kept))
    return g_strdup ("");
  return stead_number_format (stead_reading_to_unit (kept, column->reading, unit),
                              stead_reading_digits (column->reading, unit));
}

static char *
nh3_text (gpointer item,
          gpointer data)
{
  SteadWaterLog *self = data;
  double value = stead_water_value (&self->answer->scene, row_test (item), STEAD_WATER_NH3N);

  return isnan (value) ? g_strdup ("") : stead_number_format (value, 3);
}

/* "act: pH, Nitrite; watch: Alkalinity" */
static char *
verdict_text (gpointer item,
              gpointer data)
{
  SteadWaterLog *self = data;
  SteadWaterLine lines[STEAD_N_WATER_MEASURES];
  g_autoptr(GString) text = g_string_new (NULL);

  stead_water_judge_test (&self->answer->scene, row_test (item), lines);
  for (int verdict = STEAD_WATER_ACT; verdict >= STEAD_WATER_WATCH; verdict--)
    {
      gboolean begun = FALSE;

      for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
        {
          if ((int) lines[i].judgement.verdict != verdict)
            continue;
          if (!begun)
            g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "; " : "", stead_water_verdict_word (&lines[i]),
                                    stead_water_measure_name (lines[i].measure));
          else
            g_string_append_printf (text, ", %s", stead_water_measure_name (lines[i].measure));
          begun = TRUE;
        }
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
action_text (gpointer item,
             gpointer data)
{
  return g_strdup (row_test (item)->action != NULL ? row_test (item)->action : "");
}

static char *
note_text (gpointer item,
           gpointer data)
{
  return g_strdup (row_test (item)->note != NULL ? row_test (item)->note : "");
}

static char *
person_text (gpointer item,
             gpointer data)
{
  SteadWaterLog *self = data;
  const char *name = g_hash_table_lookup (self->people, &row_test (item)->person_id);

  return g_strdup (name != NULL ? name : "");
}

static int
compare_days (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  const SteadWaterTest *x = row_test ((gpointer) a), *y = row_test ((gpointer) b);

  if (x->day != y->day)
    return x->day < y->day ? -1 : 1;
  return (x->minute > y->minute) - (x->minute < y->minute);
}

/* What was not read comes before all that was. */
static int
compare_reading (gconstpointer a,
                 gconstpointer b,
                 gpointer      data)
{
  const Column *column = data;
  double x = row_test ((gpointer) a)->values[column->reading], y = row_test ((gpointer) b)->values[column->reading];

  if (isnan (x) || isnan (y))
    return !isnan (x) - !isnan (y);
  return (x > y) - (x < y);
}

/* --- editing ---------------------------------------------------------------------------- */

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_water_test_repo_save (store, data, error);
}

static gboolean
save_changed (SteadWaterLog   *self,
              SteadWaterTest  *test,
              GError         **error)
{
  g_autofree char *name = stead_water_answer_test_name (test, self->answer->water->name);
  g_autofree char *step = g_strdup_printf (_("change to %s"), name);

  return stead_desk_act (self->desk, step, save_act, test, error);
}

static gboolean
reading_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  const Column *column = data;
  g_autoptr(SteadWaterTest) test = stead_water_test_copy (row_test (item));
  g_autofree char *trimmed = g_strstrip (g_strdup (text));
  double value;

  test->values[column->reading] = NAN;
  if (trimmed[0] != '\0')
    {
      if (!stead_number_parse (trimmed, &value, error))
        return FALSE;
      test->values[column->reading] = stead_reading_from_unit (value, column->reading, unit_of (column));
    }
  return save_changed (column->log, test, error);
}

static gboolean
day_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  SteadWaterLog *self = data;
  g_autoptr(SteadWaterTest) test = stead_water_test_copy (row_test (item));

  return stead_day_parse (text, self->answer->today, stead_date_order_from_locale (), &test->day, error)
         && save_changed (self, test, error);
}

static gboolean
time_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  g_autoptr(SteadWaterTest) test = stead_water_test_copy (row_test (item));

  return stead_minute_parse (text, &test->minute, error) && save_changed (data, test, error);
}

static gboolean
text_edit (SteadWaterLog *self, gpointer item, gboolean action, const char *text, GError **error)
{
  g_autoptr(SteadWaterTest) test = stead_water_test_copy (row_test (item));
  char **field = action ? &test->action : &test->note;

  g_free (*field);
  *field = text[0] != '\0' ? g_strdup (text) : NULL;
  return save_changed (self, test, error);
}

static gboolean
action_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  return text_edit (data, item, TRUE, text, error);
}

static gboolean
note_edit (gpointer item, const char *text, gpointer data, GError **error)
{
  return text_edit (data, item, FALSE, text, error);
}

/* --- the table --------------------------------------------------------------------------- */

static void
add_reading (SteadWaterLog *self,
             SteadReading   reading)
{
  Column *column = &self->columns[reading];
  g_autofree char *title = NULL;

  *column = (Column) { self, reading };
  title = unit_of (column) == NULL
          ? g_strdup (stead_reading_name (reading))
          /* Translators: head of a column: a reading and its unit: "Nitrite, mg/L as NO₂". */
          : g_strdup_printf (C_("column", "%s, %s"), stead_reading_name (reading),
                             stead_reading_unit_symbol (unit_of (column)));
  stead_table_add_column (self->table, title, TRUE, FALSE, reading_text, reading_edit, compare_reading, column);
}

/* The heads have the units of the farm, so another system of units makes another table. */
static void
build_table (SteadWaterLog   *self,
             SteadUnitSystem  units)
{
  GtkWidget *table;

  if (self->units == (int) units)
    return;
  if (self->table != NULL)
    gtk_box_remove (self->log_slot, GTK_WIDGET (self->table));
  self->units = (int) units;
  table = stead_table_new (_("Tests of the water"));
  self->table = STEAD_TABLE (table);
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, day_edit, compare_days, self);
  stead_table_add_column (self->table, _("Time"), FALSE, FALSE, time_text, time_edit, NULL, self);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      add_reading (self, (SteadReading) i);
      if (i == STEAD_READING_TAN)
        stead_table_add_column (self->table, _("Un-ionized, mg/L as N"), TRUE, FALSE, nh3_text, NULL, NULL, self);
    }
  stead_table_add_column (self->table, C_("column", "Verdict"), FALSE, FALSE, verdict_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("What was done"), FALSE, FALSE, action_text, action_edit, NULL, self);
  stead_table_add_column (self->table, _("Note"), FALSE, FALSE, note_text, note_edit, NULL, self);
  stead_table_add_column (self->table, _("By"), FALSE, FALSE, person_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Tests appear here: record one at the left, or import a table."));
  gtk_widget_set_hexpand (table, TRUE);
  gtk_box_append (self->log_slot, table);
}

/* --- what the buttons do -------------------------------------------------------------------- */

static gboolean
delete_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_water_test_repo_delete (store, ((SteadWaterTest *) data)->id, error);
}

static void
delete_cb (SteadWaterLog *self)
{
  gpointer row = self->table != NULL ? stead_table_get_selected (self->table) : NULL;
  g_autoptr(SteadWaterTest) test = NULL;
  g_autofree char *name = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;

  if (row == NULL)
    {
      stead_desk_say (self->desk, _("Choose a test of the table first."), FALSE);
      return;
    }
  test = stead_water_test_copy (row_test (row));
  name = stead_water_answer_test_name (test, self->answer->water->name);
  step = g_strdup_printf (_("deleting %s"), name);
  if (!stead_desk_act (self->desk, step, delete_act, test, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* --- the type ----------------------------------------------------------------------------------- */

static void
stead_water_log_dispose (GObject *object)
{
  SteadWaterLog *self = STEAD_WATER_LOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WATER_LOG);
  stead_ui_drop_children (GTK_WIDGET (self));
  self->answer = NULL;
  g_clear_object (&self->desk);
  g_clear_pointer (&self->people, g_hash_table_unref);
  G_OBJECT_CLASS (stead_water_log_parent_class)->dispose (object);
}

static void
stead_water_log_class_init (SteadWaterLogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_water_log_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterLog, log_slot);
  gtk_widget_class_bind_template_callback (widget_class, delete_cb);
}

static void
stead_water_log_init (SteadWaterLog *self)
{
  self->units = -1;
  self->people = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
load_people (SteadWaterLog *self,
             SteadStore    *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  g_hash_table_remove_all (self->people);
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      SteadPerson *person = people->pdata[i];

      g_hash_table_insert (self->people, g_memdup2 (&person->id, sizeof person->id), g_strdup (person->name));
    }
}

void
stead_water_log_show (SteadWaterLog          *self,
                      SteadDesk              *desk,
                      const SteadWaterAnswer *answer)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  g_return_if_fail (STEAD_IS_WATER_LOG (self));

  g_set_object (&self->desk, desk);
  self->answer = answer;
  load_people (self, stead_desk_get_store (desk));
  build_table (self, answer->farm->units);
  for (guint i = answer->tests->len; i-- > 0;)    /* newest first */
    g_ptr_array_add (rows, stead_water_test_copy (answer->tests->pdata[i]));
  model = stead_rows_from_array (g_steal_pointer (&rows), (GDestroyNotify) stead_water_test_free);
  stead_table_set_model (self->table, model);
}
