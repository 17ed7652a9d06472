/* test-motion.c - who wants nothing to move on the screen is heard: gtk-enable-animations.
 *
 * Of our own only the axes of the break-even chart move.  What GTK moves it leaves out by
 * itself; that no place goes on to paint frames shows that nothing else does.
 */
#include "config.h"

#include "app-fixture.h"
#include "app/price/stead-cvp-view.h"
#include "app/stead-window-private.h"
#include "store/stead-product-repo.h"

/* For so long a window that lies still must paint nothing. */
#define STILL_MS 400

static void
want_motion (gboolean wanted)
{
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", wanted, "gtk-cursor-blink", FALSE, NULL);
}

/* --- the chart ------------------------------------------------------------------------------ */

static SteadPriceModel *
model_new (SteadStore *store)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, TRUE, &error);
  SteadPriceModel *model = stead_price_model_new ();

  g_assert_no_error (error);
  g_assert_true (stead_price_model_load (model, store, ((SteadProduct *) products->pdata[0])->id,
                                         STEAD_PERIOD_WHOLE_BATCH, &error));
  g_assert_no_error (error);
  return model;
}

/* Whether the axes stand where the model has them. */
static gboolean
is_there (SteadCvpView    *view,
          SteadPriceModel *model)
{
  const SteadCvpLayout *layout = stead_cvp_view_get_layout (view);
  double units, cents;

  stead_price_model_get_range (model, &units, &cents);
  return layout->max_units == units && layout->max_cents == cents;
}

/* Ten times as many: the axis must become longer. */
static void
test_axes (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  g_autoptr(SteadPriceModel) model = model_new (store);
  SteadCvpView *view = STEAD_CVP_VIEW (stead_cvp_view_new (model));
  GtkWindow *window;
  gint64 planned;
  double before, after, cents;

  want_motion (FALSE);
  window = fixture_show (GTK_WIDGET (view));
  fixture_wait_frame (GTK_WIDGET (view));
  g_assert_true (is_there (view, model));
  planned = MAX (10, stead_price_model_get (model, STEAD_KNOB_PLANNED));
  stead_price_model_get_range (model, &before, &cents);
  stead_price_model_set (model, STEAD_KNOB_PLANNED, 10 * planned);
  stead_price_model_get_range (model, &after, &cents);
  g_assert_cmpfloat (after, >, before);
  g_assert_true (is_there (view, model));
  /* With motion the same takes a while. */
  want_motion (TRUE);
  stead_price_model_set (model, STEAD_KNOB_PLANNED, 100 * planned);
  g_assert_false (is_there (view, model));
  fixture_wait_frame (GTK_WIDGET (view));
  g_assert_false (is_there (view, model));
  /* Whoever turns it off amid a move has it end at once. */
  want_motion (FALSE);
  stead_price_model_set (model, STEAD_KNOB_PLANNED, planned);
  g_assert_true (is_there (view, model));
  fixture_wait_frame (GTK_WIDGET (view));
  g_assert_true (is_there (view, model));
  fixture_close (window);
}

/* --- the whole window --------------------------------------------------------------------------- */

static gboolean
late_cb (gpointer late)
{
  *(gboolean *) late = TRUE;
  return G_SOURCE_REMOVE;
}

static void
wait_ms (guint ms)
{
  gboolean late = FALSE;

  g_timeout_add (ms, late_cb, &late);
  while (!late)
    g_main_context_iteration (NULL, TRUE);
}

static void
count_cb (GdkFrameClock *clock,
          guint         *n)
{
  (*n)++;
}

/* Frames that are painted while nobody does anything. */
static guint
frames_of (GtkWidget *widget)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);
  guint n = 0;
  gulong handler = g_signal_connect (clock, "after-paint", G_CALLBACK (count_cb), &n);

  wait_ms (STILL_MS);
  g_signal_handler_disconnect (clock, handler);
  return n;
}

/* On a busy machine what a place has to do at first may take long. */
static gboolean
comes_to_rest (GtkWidget *widget)
{
  for (int tries = 0; tries < 30; tries++)
    if (frames_of (widget) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  return G_SOURCE_CONTINUE;
}

static void
test_still (void)
{
  g_autoptr(SteadStore) store = fixture_farm ();
  SteadWindow *window;
  guint tick;

  want_motion (FALSE);
  window = STEAD_WINDOW (stead_window_new (NULL));
  gtk_window_present (GTK_WINDOW (window));
  stead_window_take (window, store);
  for (int place = 1; place <= 9; place++)
    {
      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.place", "i", place));
      fixture_settle ();
      g_test_message ("place %d", place);
      g_assert_true (comes_to_rest (GTK_WIDGET (window)));
    }
  /* What moves would be seen. */
  tick = gtk_widget_add_tick_callback (GTK_WIDGET (window), tick_cb, NULL, NULL);
  g_assert_cmpuint (frames_of (GTK_WIDGET (window)), >, 0);
  gtk_widget_remove_tick_callback (GTK_WIDGET (window), tick);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/motion/axes", test_axes);
  g_test_add_func ("/app/motion/still", test_still);
  return g_test_run ();
}
