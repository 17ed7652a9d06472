/* test-table.c - the table: its rows as text, its filter and order, its cells. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-field.h"
#include "app/stead-table-private.h"
#include "core/stead-core-error.h"

/* A model that counts how often it is read. */
#define COUNTING_TYPE_MODEL (counting_model_get_type ())
G_DECLARE_FINAL_TYPE (CountingModel, counting_model, COUNTING, MODEL, GObject)

struct _CountingModel
{
  GObject  parent_instance;
  guint    n_items;
  guint    n_read;
};

static GType
counting_model_get_item_type (GListModel *model)
{
  return STEAD_TYPE_ROW;
}

static guint
counting_model_get_n_items (GListModel *model)
{
  return COUNTING_MODEL (model)->n_items;
}

static gpointer
counting_model_get_item (GListModel *model,
                         guint       position)
{
  CountingModel *self = COUNTING_MODEL (model);

  if (position >= self->n_items)
    return NULL;
  self->n_read++;
  return stead_row_new (g_strdup_printf ("%u", position), g_free);
}

static void
counting_model_iface_init (GListModelInterface *iface)
{
  iface->get_item_type = counting_model_get_item_type;
  iface->get_n_items = counting_model_get_n_items;
  iface->get_item = counting_model_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (CountingModel, counting_model, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, counting_model_iface_init))

static void
counting_model_class_init (CountingModelClass *klass)
{
}

static void
counting_model_init (CountingModel *self)
{
}

/* --- a table of "name number" ------------------------------------------------------------- */

static char *
name_text (gpointer item,
           gpointer data)
{
  const char *fact = stead_row_get (item);

  return g_strndup (fact, strcspn (fact, " "));
}

static char *
number_text (gpointer item,
             gpointer data)
{
  const char *fact = stead_row_get (item);
  const char *space = strchr (fact, ' ');

  return g_strdup (space != NULL ? space + 1 : "");
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b,
                 gpointer      data)
{
  g_autofree char *x = number_text ((gpointer) a, NULL), *y = number_text ((gpointer) b, NULL);

  return atoi (x) - atoi (y);
}

static GString *edits;

static gboolean
edit_number (gpointer     item,
             const char  *text,
             gpointer     data,
             GError     **error)
{
  if (*text == 'x')
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE, "No x here.");
      return FALSE;
    }
  g_string_append_printf (edits, "%s=%s ", (char *) stead_row_get (item), text);
  return TRUE;
}

static GListModel *
rows (const char *first,
      ...)
{
  GPtrArray *facts = g_ptr_array_new ();
  va_list more;

  va_start (more, first);
  for (const char *fact = first; fact != NULL; fact = va_arg (more, const char *))
    g_ptr_array_add (facts, g_strdup (fact));
  va_end (more);
  return stead_rows_from_array (facts, g_free);
}

static SteadTable *
make (void)
{
  SteadTable *table = STEAD_TABLE (stead_table_new ("Things"));
  g_autoptr(GListModel) model = rows ("Feed 9", "Carton 120", "Grit 5", NULL);

  stead_table_add_column (table, "Name", FALSE, TRUE, name_text, NULL, NULL, NULL);
  stead_table_add_column (table, "Number", TRUE, FALSE, number_text, edit_number, compare_numbers, NULL);
  stead_table_set_model (table, model);
  return table;
}

static void
assert_text (SteadTable *table,
             const char *expected)
{
  g_autofree char *text = stead_table_to_text (table);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_text (void)
{
  SteadTable *table = g_object_ref_sink (make ());
  g_autoptr(GListModel) odd = rows ("a\tb 1\n2", NULL);

  assert_text (table, "Name\tNumber\nFeed\t9\nCarton\t120\nGrit\t5\n");
  stead_table_set_model (table, odd);
  assert_text (table, "Name\tNumber\na b\t1 2\n");      /* a row stays a row */
  stead_table_set_model (table, NULL);
  assert_text (table, "Name\tNumber\n");
  g_assert_finalize_object (table);
}

static void
test_filter (void)
{
  SteadTable *table = make ();
  GtkWindow *window = fixture_show (GTK_WIDGET (table));

  stead_table_set_filter (table, "GRIT");
  fixture_settle ();
  assert_text (table, "Name\tNumber\nGrit\t5\n");
  stead_table_set_filter (table, "20");
  fixture_settle ();
  assert_text (table, "Name\tNumber\nCarton\t120\n");
  stead_table_set_filter (table, "nothing");
  fixture_settle ();
  assert_text (table, "Name\tNumber\n");
  stead_table_set_filter (table, NULL);
  fixture_settle ();
  assert_text (table, "Name\tNumber\nFeed\t9\nCarton\t120\nGrit\t5\n");
  fixture_close (window);
}

static void
test_order (void)
{
  SteadTable *table = make ();
  GtkWindow *window = fixture_show (GTK_WIDGET (table));

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (table), "table.sort", "i", 1));
  fixture_settle ();
  assert_text (table, "Name\tNumber\nGrit\t5\nFeed\t9\nCarton\t120\n");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (table), "table.sort", "i", 1));
  fixture_settle ();
  assert_text (table, "Name\tNumber\nCarton\t120\nFeed\t9\nGrit\t5\n");
  fixture_close (window);
}

static gboolean
shows (SteadTable *table,
       const char *text)
{
  GtkWidget *label;

  for (guint n = 0; (label = fixture_find (GTK_WIDGET (table), GTK_TYPE_LABEL, n)) != NULL; n++)
    if (g_str_equal (gtk_label_get_text (GTK_LABEL (label)), text))
      return TRUE;
  return FALSE;
}

/* A fact that changes in its row is shown when that is said. */
static void
test_write_again (void)
{
  SteadTable *table = make ();
  GtkWindow *window = fixture_show (GTK_WIDGET (table));
  SteadRow *row;
  char *fact;

  stead_table_select (table, 0);
  row = stead_table_get_selected (table);
  fact = stead_row_get (row);
  g_assert_cmpstr (fact, ==, "Feed 9");
  fact[5] = '7';
  g_assert_true (shows (table, "9"));
  stead_table_write_again (table, row);
  g_assert_true (shows (table, "7"));
  g_assert_false (shows (table, "9"));
  g_assert_true (shows (table, "120"));
  fixture_close (window);
}

static void
test_selection (void)
{
  SteadTable *table = make ();
  GtkWindow *window = fixture_show (GTK_WIDGET (table));
  g_autoptr(GListModel) fewer = rows ("Feed 9", NULL);

  g_assert_null (stead_table_get_selected (table));
  stead_table_select (table, 1);
  g_assert_cmpstr (stead_row_get (stead_table_get_selected (table)), ==, "Carton 120");
  stead_table_select (table, 99);
  g_assert_cmpstr (stead_row_get (stead_table_get_selected (table)), ==, "Grit 5");
  stead_table_set_model (table, fewer);                  /* facts changed: the place stays near */
  g_assert_cmpstr (stead_row_get (stead_table_get_selected (table)), ==, "Feed 9");
  fixture_close (window);
}

static void
test_editing (void)
{
  SteadTable *table = make ();
  GtkWindow *window = fixture_show (GTK_WIDGET (table));
  GtkWidget *popover = fixture_find (GTK_WIDGET (table), GTK_TYPE_POPOVER, 0);
  SteadField *field = STEAD_FIELD (fixture_find (popover, STEAD_TYPE_FIELD, 0));

  edits = g_string_new (NULL);
  stead_table_select (table, 2);
  fixture_settle ();
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (table), "table.edit", NULL));
  g_assert_true (gtk_widget_get_visible (popover));
  g_assert_cmpstr (stead_field_get_text (field), ==, "5");

  stead_field_set_text (field, "x5");
  g_signal_emit_by_name (field, "activate");
  g_assert_true (gtk_widget_get_visible (popover));      /* what is wrong stays to be mended */
  g_assert_true (stead_field_has_error (field));
  g_assert_cmpstr (stead_field_get_text (field), ==, "x5");
  g_assert_cmpstr (edits->str, ==, "");

  stead_field_set_text (field, "6");
  g_signal_emit_by_name (field, "activate");
  g_assert_false (gtk_widget_get_visible (popover));
  g_assert_cmpstr (edits->str, ==, "Grit 5=6 ");

  /* What was not changed is not written. */
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (table), "table.edit", NULL));
  g_signal_emit_by_name (field, "activate");
  g_assert_cmpstr (edits->str, ==, "Grit 5=6 ");
  fixture_close (window);
  g_string_free (g_steal_pointer (&edits), TRUE);
}

static void
test_names (void)
{
  SteadTable *table = make ();
  GtkWindow *window = fixture_show (GTK_WIDGET (table));
  GtkWidget *view = fixture_find (GTK_WIDGET (table), GTK_TYPE_COLUMN_VIEW, 0);
  /* From GTK 4.12 on the cell is not the widget any more. */
  GType newer = g_type_from_name ("GtkColumnViewCellWidget");
  GtkWidget *cell = fixture_find (view, newer != 0 ? newer : g_type_from_name ("GtkColumnViewCell"), 0);

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, "Things");
  g_assert_nonnull (cell);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (gtk_widget_get_parent (cell)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Number 9, Name Feed");
  fixture_close (window);
}

/* Of a hundred thousand rows only those that can be seen are read. */
static void
test_lazy (void)
{
  SteadTable *table = STEAD_TABLE (stead_table_new ("Long"));
  CountingModel *model = g_object_new (COUNTING_TYPE_MODEL, NULL);
  GtkWindow *window;

  model->n_items = 100000;
  stead_table_add_column (table, "Name", FALSE, TRUE, name_text, NULL, NULL, NULL);
  stead_table_add_column (table, "Number", TRUE, FALSE, number_text, NULL, compare_numbers, NULL);
  stead_table_set_model (table, G_LIST_MODEL (model));
  window = fixture_show (GTK_WIDGET (table));
  stead_table_set_filter (table, "5");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (table), "table.sort", "i", 1));
  fixture_settle ();
  g_test_message ("read %u of %u rows", model->n_read, model->n_items);
  g_assert_cmpuint (model->n_read, >, 0);
  g_assert_cmpuint (model->n_read, <, 2000);
  fixture_close (window);
  g_assert_finalize_object (model);
}

static void
assert_csv (const char *cell,
            gboolean    numeric,
            const char *expected)
{
  g_autoptr(GString) csv = g_string_new (NULL);

  stead_table_csv_append (csv, (const char *[]) { cell, "end" }, (gboolean[]) { numeric, FALSE }, 2);
  g_assert_cmpstr (csv->str, ==, expected);
}

static void
test_csv (void)
{
  assert_csv ("plain", FALSE, "plain,end\r\n");
  assert_csv ("Feed, layer", FALSE, "\"Feed, layer\",end\r\n");
  assert_csv ("the \"old\" hens", FALSE, "\"the \"\"old\"\" hens\",end\r\n");
  assert_csv ("two\nlines", FALSE, "\"two\nlines\",end\r\n");
  assert_csv ("=1+1", FALSE, "\"'=1+1\",end\r\n");
  assert_csv ("@SUM(A1)", FALSE, "\"'@SUM(A1)\",end\r\n");
  assert_csv ("-3.50", FALSE, "\"'-3.50\",end\r\n");
  assert_csv ("-3.50", TRUE, "-3.50,end\r\n");            /* a number stays one */
  assert_csv ("", FALSE, ",end\r\n");
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/table/text", test_text);
  g_test_add_func ("/app/table/filter", test_filter);
  g_test_add_func ("/app/table/order", test_order);
  g_test_add_func ("/app/table/write-again", test_write_again);
  g_test_add_func ("/app/table/selection", test_selection);
  g_test_add_func ("/app/table/editing", test_editing);
  g_test_add_func ("/app/table/names", test_names);
  g_test_add_func ("/app/table/lazy", test_lazy);
  g_test_add_func ("/app/table/csv", test_csv);
  return g_test_run ();
}
