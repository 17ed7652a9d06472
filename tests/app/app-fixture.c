/* app-fixture.c - what the tests of the window's parts share. */
#include "config.h"

#include "app-fixture.h"

#include <math.h>

#include "app/stead-scheme.h"
#include "app/stead-ui.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-receipt-repo.h"

#define TODAY stead_day_new (2026, 3, 3)

void
fixture_init (int    *argc,
              char ***argv)
{
  gtk_test_init (argc, argv, NULL);
  stead_ui_register ();
  stead_scheme_start ();
}

static gint64
add_item (SteadStore    *store,
          const char    *name,
          SteadItemKind  kind,
          const char    *unit)
{
  g_autoptr(SteadItem) item = g_new0 (SteadItem, 1);
  g_autoptr(GError) error = NULL;

  item->name = g_strdup (name);
  item->kind = kind;
  item->unit = stead_unit_by_id (unit);
  item->reorder_base = NAN;
  g_assert_true (stead_item_repo_save (store, item, &error));
  g_assert_no_error (error);
  return item->id;
}

static void
add_receipt (SteadStore *store,
             gint64      feed,
             gint64      carton)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine lines[] = {
    { .item_id = feed, .quantity_base = 100, .cost_cents = 6600, .best_by = STEAD_DAY_NONE },
    { .item_id = carton, .quantity_base = 200, .cost_cents = 7600, .best_by = STEAD_DAY_NONE },
  };
  g_autoptr(GError) error = NULL;

  receipt->day = TODAY - 20;
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  g_array_append_vals (receipt->lines, lines, G_N_ELEMENTS (lines));
  g_assert_true (stead_receipt_repo_save (store, receipt, &error));
  g_assert_no_error (error);
}

static gint64
add_flock (SteadStore *store,
           gint64      feed)
{
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  g_autoptr(GError) error = NULL;

  flock->name = g_strdup ("Brown hens");
  flock->housed_on = TODAY - 20;
  flock->hatched_on = TODAY - 200;
  flock->birds = 30;
  flock->birds_cost_cents = 36000;
  flock->eggs_expected = 300;
  flock->feed_item_id = feed;
  g_assert_true (stead_flock_repo_save (store, flock, &error));
  g_assert_no_error (error);
  for (int i = 10; i > 0; i--)
    {
      SteadFlockEntry entry = { .flock_id = flock->id, .day = TODAY - i, .eggs = 24, .feed_kg = 3 };

      g_assert_true (stead_flock_repo_save_entry (store, &entry, &error));
      g_assert_no_error (error);
    }
  return flock->id;
}

static void
add_product (SteadStore *store,
             gint64      flock,
             gint64      carton)
{
  g_autoptr(SteadProduct) product = stead_product_new ();
  SteadProductPart part = { carton, 1 };
  g_autoptr(GError) error = NULL;

  product->name = g_strdup ("Eggs");
  product->pack = STEAD_PACK_DOZEN;
  product->base_per_unit = 12;
  product->batch_id = flock;
  product->planned_units = 72;
  g_array_append_val (product->parts, part);
  g_assert_true (stead_product_repo_save (store, product, &error));
  g_assert_no_error (error);
  g_assert_true (stead_product_repo_set_price (store, product->id, TODAY, 450, NULL, &error));
  g_assert_no_error (error);
}

SteadStore *
fixture_farm (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Test farm", &error);
  gint64 feed, carton;

  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  g_assert_true (stead_store_begin (store, "start", &error));
  feed = add_item (store, "Layer feed", STEAD_ITEM_FEED, "lb");
  carton = add_item (store, "Egg carton", STEAD_ITEM_PACKAGING, "ea");
  add_receipt (store, feed, carton);
  add_product (store, add_flock (store, feed), carton);
  g_assert_true (stead_store_commit (store, &error));
  g_assert_no_error (error);
  return store;
}

void
fixture_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
painted_cb (GdkFrameClock *clock,
            gpointer       painted)
{
  *(gboolean *) painted = TRUE;
}

void
fixture_wait_frame (GtkWidget *widget)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);
  gboolean painted = FALSE;
  gulong handler = g_signal_connect_after (clock, "after-paint", G_CALLBACK (painted_cb), &painted);

  gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_AFTER_PAINT);
  while (!painted)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handler_disconnect (clock, handler);
}

static gboolean
late_cb (gpointer late)
{
  *(gboolean *) late = TRUE;
  return G_SOURCE_REMOVE;
}

GtkWindow *
fixture_show (GtkWidget *child)
{
  GtkWidget *window = gtk_window_new ();
  gboolean late = FALSE;
  guint timer = g_timeout_add_seconds (20, late_cb, &late);

  gtk_widget_add_css_class (window, "steading");
  gtk_window_set_default_size (GTK_WINDOW (window), 640, 480);
  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_present (GTK_WINDOW (window));
  while (!(gtk_widget_get_mapped (child) && gtk_widget_get_width (child) > 0) && !late)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (late);
  g_source_remove (timer);
  fixture_settle ();
  return GTK_WINDOW (window);
}

void
fixture_close (GtkWindow *window)
{
  gtk_window_destroy (window);
  fixture_settle ();
}

static GtkWidget *
find (GtkWidget *widget,
      GType      type,
      guint     *left)
{
  if (g_type_is_a (G_OBJECT_TYPE (widget), type) && (*left)-- == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, type, left);

      if (found != NULL)
        return found;
    }
  return NULL;
}

GtkWidget *
fixture_find (GtkWidget *widget,
              GType      type,
              guint      n)
{
  return find (widget, type, &n);
}

GtkWidget *
fixture_button (GtkWidget  *widget,
                const char *label)
{
  GtkWidget *button;

  for (guint i = 0; (button = fixture_find (widget, GTK_TYPE_BUTTON, i)) != NULL; i++)
    if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (button)), label) == 0)
      return button;
  g_test_message ("no button says %s", label);
  g_assert_nonnull (button);
  return NULL;
}
