/* stead-page.c - one place of the strip: the base of Today, Raise, Keep, Price.
 *
 * Invariant: refresh() runs only while the page is mapped and a farm is open; a
 * change that comes while it is hidden is remembered and served when it is shown.
 */
#include "config.h"

#include "app/stead-page.h"
#include "app/stead-ui.h"

typedef struct
{
  SteadDesk *desk;
  gboolean   stale;       /* facts changed since the last refresh */
  gboolean   refreshing;
} SteadPagePrivate;

enum
{
  PROP_0,
  PROP_DESK,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SteadPage, stead_page, GTK_TYPE_WIDGET)

static void
refresh_if_stale (SteadPage *self)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (self);

  if (!priv->stale || priv->refreshing || stead_page_get_store (self) == NULL)
    return;
  priv->stale = FALSE;
  priv->refreshing = TRUE;
  if (STEAD_PAGE_GET_CLASS (self)->refresh != NULL)
    STEAD_PAGE_GET_CLASS (self)->refresh (self);
  priv->refreshing = FALSE;
}

static void
stead_page_map (GtkWidget *widget)
{
  refresh_if_stale (STEAD_PAGE (widget));
  GTK_WIDGET_CLASS (stead_page_parent_class)->map (widget);
}

static void
stead_page_constructed (GObject *object)
{
  SteadPage *self = STEAD_PAGE (object);
  SteadPagePrivate *priv = stead_page_get_instance_private (self);

  G_OBJECT_CLASS (stead_page_parent_class)->constructed (object);
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  if (priv->desk != NULL)
    g_signal_connect_object (priv->desk, "changed", G_CALLBACK (stead_page_invalidate), self,
                             G_CONNECT_SWAPPED);
}

static void
stead_page_dispose (GObject *object)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (STEAD_PAGE (object));

  if (priv->desk != NULL)
    g_signal_handlers_disconnect_by_func (priv->desk, stead_page_invalidate, object);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&priv->desk);
  G_OBJECT_CLASS (stead_page_parent_class)->dispose (object);
}

static void
stead_page_get_property (GObject    *object,
                         guint       id,
                         GValue     *value,
                         GParamSpec *pspec)
{
  if (id == PROP_DESK)
    g_value_set_object (value, stead_page_get_desk (STEAD_PAGE (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
stead_page_set_property (GObject      *object,
                         guint         id,
                         const GValue *value,
                         GParamSpec   *pspec)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (STEAD_PAGE (object));

  if (id == PROP_DESK)
    priv->desk = g_value_dup_object (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
stead_page_class_init (SteadPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->constructed = stead_page_constructed;
  object_class->dispose = stead_page_dispose;
  object_class->get_property = stead_page_get_property;
  object_class->set_property = stead_page_set_property;
  widget_class->map = stead_page_map;

  props[PROP_DESK] = g_param_spec_object ("desk", NULL, NULL, STEAD_TYPE_DESK,
                                          G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "place");
}

static void
stead_page_init (SteadPage *self)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (self);

  priv->stale = TRUE;
}

/**
 * stead_page_get_desk:
 *
 * Returns: (transfer none): the desk that the page was made for
 */
SteadDesk *
stead_page_get_desk (SteadPage *self)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (self);

  g_return_val_if_fail (STEAD_IS_PAGE (self), NULL);
  return priv->desk;
}

/**
 * stead_page_get_store:
 *
 * Returns: (transfer none) (nullable): the open farm
 */
SteadStore *
stead_page_get_store (SteadPage *self)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (self);

  g_return_val_if_fail (STEAD_IS_PAGE (self), NULL);
  return priv->desk != NULL ? stead_desk_get_store (priv->desk) : NULL;
}

/**
 * stead_page_show:
 * @target: what kind of thing
 * @id: which one
 *
 * Shows one thing on the page, which is refreshed first if it is mapped.
 */
void
stead_page_show (SteadPage   *self,
                 SteadTarget  target,
                 gint64       id)
{
  g_return_if_fail (STEAD_IS_PAGE (self));

  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh_if_stale (self);
  if (STEAD_PAGE_GET_CLASS (self)->show != NULL)
    STEAD_PAGE_GET_CLASS (self)->show (self, target, id);
}

void
stead_page_invalidate (SteadPage *self)
{
  SteadPagePrivate *priv = stead_page_get_instance_private (self);

  g_return_if_fail (STEAD_IS_PAGE (self));
  priv->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh_if_stale (self);
}
