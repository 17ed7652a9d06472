/* stead-strip-news.c - tells the posts of the strip what is new in their places.
 *
 * What is due takes longer to work out than a tap may take to be seen.  So of a change the
 * strip is told only after the frame that shows it: ticks come before a frame is painted,
 * idle work after it.
 */
#include "config.h"

#include "app/stead-strip-news.h"

#include "answer/stead-due-answer.h"
#include "app/stead-first-look.h"

struct _SteadStripNews
{
  GObject           parent_instance;

  SteadStrip       *strip;
  SteadDesk        *desk;
  const SteadStore *told;   /* not owned, may be gone: the farm that the strip tells of */
  guint             tick;   /* 0: it waits for no frame */
  guint             idle;   /* 0: nor for what comes after it */
};

G_DEFINE_FINAL_TYPE (SteadStripNews, stead_strip_news, G_TYPE_OBJECT)

static void
show (SteadStrip             *strip,
      const SteadStripAnswer *answer)
{
  const struct { const char *name, *figure, *brief; gboolean warns; } posts[] = {
    { "today", answer->today, answer->today_brief, answer->today_warns },
    { "raise", answer->raise, NULL, FALSE },
    { "make", answer->make, answer->make_brief, FALSE },
    { "check", answer->check, answer->check_brief, answer->check_warns },
    { "price", answer->price, answer->price_brief, FALSE },
    { "sell", answer->sell, answer->sell_brief, FALSE },
    { "fund", answer->fund, answer->fund_brief, FALSE },
    { "keep", answer->keep, answer->keep_brief, FALSE },
    { "show", answer->show, answer->show_brief, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (posts); i++)
    {
      stead_strip_set_figure (strip, posts[i].name, posts[i].figure, posts[i].warns);
      stead_strip_set_brief (strip, posts[i].name, posts[i].brief);
    }
}

static void
forget (SteadStripNews *self)
{
  if (self->tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self->strip), self->tick);
  self->tick = 0;
  g_clear_handle_id (&self->idle, g_source_remove);
}

static void
tell (SteadStripNews *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  gint64 product_id = stead_desk_get_product (self->desk);
  g_autoptr(SteadStripAnswer) answer = NULL;

  forget (self);
  self->told = store;
  if (store == NULL)
    return;
  if (product_id == 0)
    answer = stead_first_look_take_strip (store);
  if (answer == NULL)
    answer = stead_strip_answer_new (store, stead_desk_get_due (self->desk, NULL), product_id, NULL);
  if (answer != NULL)
    show (self->strip, answer);
}

static gboolean
idle_cb (gpointer data)
{
  SteadStripNews *self = data;

  self->idle = 0;
  tell (self);
  return G_SOURCE_REMOVE;
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  SteadStripNews *self = data;

  self->tick = 0;
  self->idle = g_idle_add (idle_cb, self);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (SteadStripNews *self)
{
  if (stead_desk_get_store (self->desk) != self->told || !gtk_widget_get_mapped (GTK_WIDGET (self->strip)))
    tell (self);
  else if (self->tick == 0 && self->idle == 0)
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self->strip), tick_cb, self, NULL);
}

static void
stead_strip_news_dispose (GObject *object)
{
  SteadStripNews *self = STEAD_STRIP_NEWS (object);

  if (self->strip != NULL)
    forget (self);
  g_clear_object (&self->strip);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_strip_news_parent_class)->dispose (object);
}

static void
stead_strip_news_class_init (SteadStripNewsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_strip_news_dispose;
}

static void
stead_strip_news_init (SteadStripNews *self)
{
}

SteadStripNews *
stead_strip_news_new (SteadStrip *strip,
                      SteadDesk  *desk)
{
  SteadStripNews *self = g_object_new (STEAD_TYPE_STRIP_NEWS, NULL);

  self->strip = g_object_ref (strip);
  self->desk = g_object_ref (desk);
  g_signal_connect_object (desk, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (desk, "selected", G_CALLBACK (tell), self, G_CONNECT_SWAPPED);
  return self;
}
