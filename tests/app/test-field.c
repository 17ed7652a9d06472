/* test-field.c - a labelled entry: what it reads, and how it says what is wrong. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-field.h"

static SteadField *
make (SteadFieldKind kind)
{
  return STEAD_FIELD (g_object_ref_sink (stead_field_new ("Eggs", kind)));
}

static GtkAccessible *
entry_of (SteadField *field)
{
  return GTK_ACCESSIBLE (fixture_find (GTK_WIDGET (field), GTK_TYPE_ENTRY, 0));
}

/* Frees the field, which must be the last reference to it. */
static void
drop (SteadField *field)
{
  g_assert_finalize_object (field);
}

static void
test_count (void)
{
  static const struct { const char *text; gint64 value; } good[] = {
    { "0", 0 }, { "22", 22 }, { " 7 ", 7 }, { "1,200", 1200 },
  };
  static const char * const bad[] = { "two", "-1", "2.5", "1e99", "22 eggs" };
  SteadField *field = make (STEAD_FIELD_COUNT);

  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      gint64 value = -1;

      g_test_message ("%s", good[i].text);
      stead_field_set_text (field, good[i].text);
      g_assert_true (stead_field_read_count (field, 0, &value));
      g_assert_cmpint (value, ==, good[i].value);
      g_assert_false (stead_field_has_error (field));
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      gint64 value = 99;

      g_test_message ("%s", bad[i]);
      stead_field_set_text (field, bad[i]);
      g_assert_false (stead_field_read_count (field, 0, &value));
      g_assert_cmpint (value, ==, 99);
      g_assert_true (stead_field_has_error (field));
      g_assert_cmpstr (stead_field_get_text (field), ==, bad[i]);
    }
  drop (field);
}

static void
test_kinds (void)
{
  g_autoptr(SteadField) money = make (STEAD_FIELD_MONEY);
  g_autoptr(SteadField) percent = make (STEAD_FIELD_PERCENT);
  g_autoptr(SteadField) mass = make (STEAD_FIELD_QUANTITY);
  g_autoptr(SteadField) day = make (STEAD_FIELD_DAY);
  gint64 cents = 0;
  double number = 0;
  SteadDay read = STEAD_DAY_NONE;

  stead_field_set_text (money, "$4.50");
  g_assert_true (stead_field_read_money (money, 0, &cents));
  g_assert_cmpint (cents, ==, 450);
  stead_field_set_text (money, "4.505");
  g_assert_false (stead_field_read_money (money, 0, &cents));
  g_assert_cmpint (cents, ==, 450);

  stead_field_set_text (percent, "5");
  g_assert_true (stead_field_read_number (percent, 0, &number));
  g_assert_cmpfloat_with_epsilon (number, 0.05, 1e-12);
  stead_field_set_text (percent, "12.5 %");
  g_assert_true (stead_field_read_number (percent, 0, &number));
  g_assert_cmpfloat_with_epsilon (number, 0.125, 1e-12);

  stead_field_set_unit (mass, stead_unit_by_id ("lb"));
  stead_field_set_text (mass, "2 lb 4 oz");
  g_assert_true (stead_field_read_quantity (mass, 0, &number));
  g_assert_cmpfloat_with_epsilon (number, 2.25 * 0.45359237, 1e-12);
  stead_field_set_text (mass, "3 gal");
  g_assert_false (stead_field_read_quantity (mass, 0, &number));

  stead_field_set_today (day, stead_day_new (2026, 3, 3));
  stead_field_set_text (day, "yesterday");
  g_assert_true (stead_field_read_day (day, 0, &read));
  g_assert_cmpint (read, ==, stead_day_new (2026, 3, 2));
}

/* What is shown reads back as the same value. */
static void
test_round_trip (void)
{
  g_autoptr(SteadField) money = make (STEAD_FIELD_MONEY);
  g_autoptr(SteadField) percent = make (STEAD_FIELD_PERCENT);
  g_autoptr(SteadField) mass = make (STEAD_FIELD_QUANTITY);
  g_autoptr(SteadField) day = make (STEAD_FIELD_DAY);
  gint64 cents = 0;
  double number = 0;
  SteadDay read = STEAD_DAY_NONE;

  stead_field_show_money (money, 123456);
  g_assert_cmpstr (stead_field_get_text (money), ==, "1234.56");
  g_assert_true (stead_field_read_money (money, 0, &cents));
  g_assert_cmpint (cents, ==, 123456);
  stead_field_show_number (percent, 0.075);
  g_assert_cmpstr (stead_field_get_text (percent), ==, "7.5");
  stead_field_set_unit (mass, stead_unit_by_id ("lb"));
  stead_field_show_quantity (mass, 0.45359237 * 6.8);
  g_assert_cmpstr (stead_field_get_text (mass), ==, "6.8");
  g_assert_true (stead_field_read_quantity (mass, 0, &number));
  g_assert_cmpfloat_with_epsilon (number, 0.45359237 * 6.8, 1e-9);
  stead_field_set_today (day, stead_day_new (2026, 3, 3));
  stead_field_show_day (day, stead_day_new (2024, 2, 29));
  g_assert_true (stead_field_read_day (day, 0, &read));
  g_assert_cmpint (read, ==, stead_day_new (2024, 2, 29));
}

/* 9.3 m² stand as 100.1044 sq ft, which are 9.300003 m²: a form that is saved unread changes nothing. */
static void
test_shown_stays (void)
{
  g_autoptr(SteadField) area = make (STEAD_FIELD_QUANTITY);
  g_autoptr(SteadField) number = make (STEAD_FIELD_NUMBER);
  g_autoptr(SteadField) pieces = make (STEAD_FIELD_COUNT);
  const double foot_m2 = 0.3048 * 0.3048;
  double read = 0;
  gint64 count = 0;

  stead_field_set_unit (area, stead_unit_by_id ("sqft"));
  stead_field_show_quantity (area, 9.3);
  g_assert_cmpstr (stead_field_get_text (area), ==, "100.1044");
  g_assert_true (stead_field_read_quantity (area, 0, &read));
  g_assert_cmpfloat (read, ==, 9.3);

  /* What is typed is what was meant, even so little more. */
  stead_field_set_text (area, "100.1044");
  g_assert_true (stead_field_read_quantity (area, 0, &read));
  g_assert_cmpfloat_with_epsilon (read, 100.1044 * foot_m2, 1e-12);
  stead_field_show_quantity (area, 9.3);
  stead_field_set_text (area, "100.1045");
  g_assert_true (stead_field_read_quantity (area, 0, &read));
  g_assert_cmpfloat_with_epsilon (read, 100.1045 * foot_m2, 1e-12);

  /* The same number in another unit is another amount. */
  stead_field_show_quantity (area, 9.3);
  stead_field_set_unit (area, stead_unit_by_id ("m2"));
  g_assert_true (stead_field_read_quantity (area, 0, &read));
  g_assert_cmpfloat_with_epsilon (read, 100.1044, 1e-12);

  stead_field_show_as (number, "2,880", 2880.4);
  g_assert_true (stead_field_read_number (number, 0, &read));
  g_assert_cmpfloat (read, ==, 2880.4);
  stead_field_show_number (number, 1 / 3.0);
  g_assert_true (stead_field_read_number (number, 0, &read));
  g_assert_cmpfloat (read, ==, 1 / 3.0);

  stead_field_show_number (pieces, 12);
  g_assert_true (stead_field_read_count (pieces, 0, &count));
  g_assert_cmpint (count, ==, 12);
}

static void
test_empty (void)
{
  g_autoptr(SteadField) field = make (STEAD_FIELD_COUNT);
  gint64 value = 0;

  stead_field_set_text (field, "  ");
  g_assert_true (stead_field_is_empty (field));
  g_assert_true (stead_field_read_count (field, -1, &value));
  g_assert_cmpint (value, ==, -1);
  g_object_set (field, "required", TRUE, NULL);
  g_assert_false (stead_field_read_count (field, -1, &value));
  g_assert_true (stead_field_has_error (field));
}

/* The screen reader hears the same as the eye sees. */
static void
test_accessible (void)
{
  g_autoptr(SteadField) field = make (STEAD_FIELD_COUNT);
  GtkAccessible *entry = entry_of (field);
  GtkWidget *label = fixture_find (GTK_WIDGET (field), GTK_TYPE_LABEL, 0);
  gint64 value;

  gtk_test_accessible_assert_role (entry, GTK_ACCESSIBLE_ROLE_TEXT_BOX);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (label)), ==, "Eggs");
  gtk_test_accessible_assert_relation (entry, GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL);

  stead_field_set_text (field, "many");
  g_assert_false (stead_field_read_count (field, 0, &value));
  gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_true (gtk_test_accessible_has_property (entry, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));

  /* Typing on takes the message away; the text is the person's. */
  gtk_editable_set_text (GTK_EDITABLE (entry), "22");
  g_assert_false (stead_field_has_error (field));
  gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_FALSE);
}

static void
count_cb (int *count)
{
  (*count)++;
}

static void
test_left (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *field = stead_field_new ("Eggs", STEAD_FIELD_COUNT);
  GtkWidget *other = gtk_entry_new ();
  int changes = 0;
  GtkWindow *window;

  gtk_box_append (GTK_BOX (box), field);
  gtk_box_append (GTK_BOX (box), other);
  g_signal_connect_swapped (field, "changed", G_CALLBACK (count_cb), &changes);
  window = fixture_show (box);
  gtk_widget_grab_focus (field);
  gtk_editable_set_text (GTK_EDITABLE (entry_of (STEAD_FIELD (field))), "x");
  g_assert_cmpint (changes, ==, 1);
  g_assert_false (stead_field_has_error (STEAD_FIELD (field)));   /* not at each key */
  gtk_widget_grab_focus (other);
  g_assert_true (stead_field_has_error (STEAD_FIELD (field)));    /* but when left */
  gtk_editable_set_text (GTK_EDITABLE (entry_of (STEAD_FIELD (field))), "");
  gtk_widget_grab_focus (field);
  gtk_widget_grab_focus (other);
  g_assert_false (stead_field_has_error (STEAD_FIELD (field)));   /* empty is no fault yet */
  fixture_close (window);
}

static int
measured (SteadField     *field,
          GtkOrientation  orientation,
          int             for_size)
{
  int least;

  gtk_widget_measure (GTK_WIDGET (field), orientation, for_size, &least, NULL, NULL, NULL);
  return least;
}

/* A row of fields takes the height that a field tells without a width for its least one. */
static void
test_height (void)
{
  g_autoptr(SteadField) field = STEAD_FIELD (g_object_ref_sink (stead_field_new ("Left of all that was trimmed", STEAD_FIELD_NUMBER)));
  int least = measured (field, GTK_ORIENTATION_VERTICAL, -1);
  int narrow = measured (field, GTK_ORIENTATION_HORIZONTAL, -1);
  int wide = measured (field, GTK_ORIENTATION_HORIZONTAL, least);

  g_assert_cmpint (narrow, <, wide);
  g_assert_cmpint (measured (field, GTK_ORIENTATION_VERTICAL, narrow), >, least);     /* its label wraps */
  g_assert_cmpint (measured (field, GTK_ORIENTATION_VERTICAL, wide - 1), >, least);
  g_assert_cmpint (measured (field, GTK_ORIENTATION_VERTICAL, wide), ==, least);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/field/count", test_count);
  g_test_add_func ("/app/field/kinds", test_kinds);
  g_test_add_func ("/app/field/round-trip", test_round_trip);
  g_test_add_func ("/app/field/shown-stays", test_shown_stays);
  g_test_add_func ("/app/field/empty", test_empty);
  g_test_add_func ("/app/field/accessible", test_accessible);
  g_test_add_func ("/app/field/left", test_left);
  g_test_add_func ("/app/field/height", test_height);
  return g_test_run ();
}
