/* stead-strip.c - the row of posts at the top.
 *
 * Invariant: what a post shows is what it is called: "Today, 3 due, 1 warning".
 * A warning is a symbol and heavier words, not a colour alone.  With large text the
 * posts stand in two rows where one would cut off their verbs.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-fit-layout.h"
#include "app/stead-strip.h"
#include "app/stead-ui.h"

#define POST_WIDTH 137       /* at the usual size of text */
#define POST_LEAST 80        /* nine of them and the tools fit 1024 px */
#define POST_PAD 8           /* as in steading.css */
#define SYMBOL_GAP 3
#define USUAL_TEXT_PX 13.3   /* 10 pt at 96 dots an inch */

typedef struct
{
  char      *name;
  char      *label;
  GtkWidget *button;    /* not owned */
  GtkWidget *verb;
  GtkWidget *symbol;
  GtkWidget *figure;
  GtkWidget *brief;     /* the same in few letters, where there is no room */
} Post;

struct _SteadStrip
{
  GtkWidget  parent_instance;

  GPtrArray *posts;     /* of Post, left to right; their buttons are the children */
  gboolean   quiet;     /* the code is choosing, not the person */
};

enum
{
  SIGNAL_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadStrip, stead_strip, GTK_TYPE_WIDGET)

static void
post_free (Post *post)
{
  g_free (post->name);
  g_free (post->label);
  g_free (post);
}

static Post *
find_post (SteadStrip *self,
           const char *name)
{
  for (guint i = 0; i < self->posts->len; i++)
    {
      Post *post = self->posts->pdata[i];

      if (g_strcmp0 (post->name, name) == 0)
        return post;
    }
  return NULL;
}

static void
toggled_cb (SteadStrip      *self,
            GtkToggleButton *button)
{
  if (self->quiet || !gtk_toggle_button_get_active (button))
    return;
  for (guint i = 0; i < self->posts->len; i++)
    {
      Post *post = self->posts->pdata[i];

      if (post->button == GTK_WIDGET (button))
        g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, post->name);
    }
}

static GtkWidget *
make_line (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_widget_add_css_class (label, css_class);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  return label;
}

static GtkWidget *
make_content (Post *post)
{
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *above = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, SYMBOL_GAP);
  GtkWidget *figures = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  post->verb = make_line ("verb");
  gtk_label_set_text (GTK_LABEL (post->verb), post->label);
  post->figure = make_line ("live");
  post->brief = make_line ("live");
  gtk_widget_set_visible (post->brief, FALSE);
  gtk_widget_set_layout_manager (figures, stead_fit_layout_new ());
  gtk_box_append (GTK_BOX (figures), post->figure);
  gtk_box_append (GTK_BOX (figures), post->brief);
  post->symbol = gtk_image_new_from_icon_name ("stead-warning-symbolic");
  gtk_widget_add_css_class (post->symbol, "live");
  gtk_widget_add_css_class (post->symbol, "warn");
  stead_ui_name (post->symbol, _("Warning"));
  gtk_widget_set_visible (post->symbol, FALSE);
  gtk_box_append (GTK_BOX (above), post->verb);
  gtk_box_append (GTK_BOX (above), post->symbol);
  gtk_box_append (GTK_BOX (content), above);
  gtk_box_append (GTK_BOX (content), figures);
  gtk_widget_set_valign (content, GTK_ALIGN_CENTER);
  return content;
}

/* How much larger than usual the person's text is. */
static double
text_scale (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = pango_font_description_get_size (font) / (double) PANGO_SCALE;

  if (!pango_font_description_get_size_is_absolute (font))
    size *= pango_cairo_context_get_resolution (context) > 0 ? pango_cairo_context_get_resolution (context) / 72 : 96 / 72.0;
  return size > 0 ? MAX (1, size / USUAL_TEXT_PX) : 1;
}

/* What one post needs for its whole verb. */
static int
own_width (const Post *post)
{
  int verb, symbol;

  gtk_widget_measure (post->verb, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &verb, NULL, NULL);
  gtk_widget_measure (post->symbol, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &symbol, NULL, NULL);
  return verb + (gtk_widget_get_visible (post->symbol) ? symbol + SYMBOL_GAP : 0) + 2 * POST_PAD;
}

/* What all need, where each has what it needs, and where each has as much as the widest. */
static int
sum_of_widths (SteadStrip *self,
               int        *widest)
{
  int sum = 0;

  *widest = POST_LEAST;
  for (guint i = 0; i < self->posts->len; i++)
    {
      int own = own_width (self->posts->pdata[i]);

      sum += own;
      *widest = MAX (*widest, own);
    }
  return sum;
}

/* Posts beside each other in @width: all of them, or half of them in each of two rows. */
static int
columns (SteadStrip *self,
         int         width)
{
  int n = (int) self->posts->len;
  int widest, sum = sum_of_widths (self, &widest);

  return width < 0 || sum <= MAX (width, n * POST_LEAST) ? n : (n + 1) / 2;
}

/* What the posts of one column need, with so many of them beside each other. */
static int
column_width (SteadStrip *self,
              int         across,
              int         column)
{
  int width = 0;

  for (guint i = (guint) column; i < self->posts->len; i += (guint) across)
    width = MAX (width, own_width (self->posts->pdata[i]));
  return width;
}

static int
sum_of_columns (SteadStrip *self,
                int         across)
{
  int sum = 0;

  for (int column = 0; column < across; column++)
    sum += column_width (self, across, column);
  return sum;
}

static void
measure_width (SteadStrip *self,
               int        *minimum,
               int        *natural)
{
  int n = (int) self->posts->len;
  int across = columns (self, 0);

  *minimum = across == n ? n * POST_LEAST : sum_of_columns (self, across);
  *natural = MAX (*minimum, (int) (n * POST_WIDTH * text_scale (GTK_WIDGET (self))));
}

static void
measure_height (SteadStrip *self,
                int         width,
                int        *minimum,
                int        *natural)
{
  int n = (int) self->posts->len;
  int across = MAX (1, columns (self, width));

  *minimum = *natural = 0;
  for (int i = 0; i < n; i++)
    {
      int least, wanted;

      gtk_widget_measure (((Post *) self->posts->pdata[i])->button, GTK_ORIENTATION_VERTICAL, -1,
                          &least, &wanted, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, wanted);
    }
  *minimum *= (n + across - 1) / across;
  *natural *= (n + across - 1) / across;
}

static void
stead_strip_measure (GtkWidget      *widget,
                     GtkOrientation  orientation,
                     int             for_size,
                     int            *minimum,
                     int            *natural,
                     int            *minimum_baseline,
                     int            *natural_baseline)
{
  SteadStrip *self = STEAD_STRIP (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (self, minimum, natural);
  else
    measure_height (self, for_size, minimum, natural);
}

static GtkSizeRequestMode
stead_strip_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* Where each column begins, and the last one ends, from the side where reading starts: columns
 * of one width, or, where that is too narrow for a verb, each as wide as its own and an equal
 * part of what is left over. */
static void
find_edges (SteadStrip *self,
            int         width,
            int         across,
            int        *edges)
{
  int sum = sum_of_columns (self, across);
  gboolean even;
  int widest, used = 0;

  sum_of_widths (self, &widest);
  even = across * widest <= width || widest <= POST_LEAST;
  for (int i = 0; i <= across; i++)
    {
      edges[i] = even ? width * i / across : used + (width - sum) * i / across;
      if (i < across)
        used += column_width (self, across, i);
    }
}

static void
stead_strip_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  SteadStrip *self = STEAD_STRIP (widget);
  int n = (int) self->posts->len;
  int across = MAX (1, columns (self, width));
  int down = (n + across - 1) / across;
  gboolean mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  g_autofree int *edges = g_new (int, across + 1);

  find_edges (self, width, across, edges);
  for (int i = 0; i < n; i++)
    {
      int column = i % across;
      int top = height * (i / across) / down;
      int wide = edges[column + 1] - edges[column];
      int left = mirrored ? width - edges[column + 1] : edges[column];
      GtkAllocation place = { left, top, wide, height * (i / across + 1) / down - top };

      gtk_widget_size_allocate (((Post *) self->posts->pdata[i])->button, &place, -1);
    }
}

static void
stead_strip_dispose (GObject *object)
{
  SteadStrip *self = STEAD_STRIP (object);

  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->posts, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_strip_parent_class)->dispose (object);
}

static void
stead_strip_class_init (SteadStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_strip_dispose;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                         NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  widget_class->measure = stead_strip_measure;
  widget_class->get_request_mode = stead_strip_get_request_mode;
  widget_class->size_allocate = stead_strip_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "posts");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_NAVIGATION);
}

static void
stead_strip_init (SteadStrip *self)
{
  self->posts = g_ptr_array_new_with_free_func ((GDestroyNotify) post_free);
  stead_ui_name (GTK_WIDGET (self), _("Places"));
}

GtkWidget *
stead_strip_new (void)
{
  return g_object_new (STEAD_TYPE_STRIP, NULL);
}

void
stead_strip_add (SteadStrip *self,
                 const char *name,
                 const char *label)
{
  Post *first, *post;

  g_return_if_fail (STEAD_IS_STRIP (self));
  g_return_if_fail (name != NULL && label != NULL);

  first = self->posts->len > 0 ? self->posts->pdata[0] : NULL;
  post = g_new0 (Post, 1);
  post->name = g_strdup (name);
  post->label = g_strdup (label);
  post->button = gtk_toggle_button_new ();
  if (first != NULL)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (post->button), GTK_TOGGLE_BUTTON (first->button));
  gtk_widget_add_css_class (post->button, "post");
  gtk_button_set_child (GTK_BUTTON (post->button), make_content (post));
  g_signal_connect_swapped (post->button, "toggled", G_CALLBACK (toggled_cb), self);
  g_ptr_array_add (self->posts, post);
  gtk_widget_set_parent (post->button, GTK_WIDGET (self));
  stead_strip_set_figure (self, name, NULL, FALSE);
}

static void
show_warning (GtkWidget *label,
              gboolean   warns)
{
  if (warns)
    gtk_widget_add_css_class (label, "warn");
  else
    gtk_widget_remove_css_class (label, "warn");
}

void
stead_strip_set_figure (SteadStrip *self,
                        const char *name,
                        const char *figure,
                        gboolean    warns)
{
  g_autofree char *said = NULL;
  Post *post;

  g_return_if_fail (STEAD_IS_STRIP (self));

  post = find_post (self, name);
  if (post == NULL)
    return;
  gtk_label_set_text (GTK_LABEL (post->figure), figure != NULL ? figure : "");
  gtk_widget_set_visible (post->symbol, warns);
  show_warning (post->figure, warns);
  show_warning (post->brief, warns);
  if (figure != NULL && *figure != '\0')
    /* Translators: a place and its live figure, as a screen reader says them: "Today, 3 due". */
    said = g_strdup_printf (C_("post", "%1$s, %2$s"), post->label, figure);
  stead_ui_name (post->button, said != NULL ? said : post->label);
  gtk_widget_set_tooltip_text (post->button, figure);
}

void
stead_strip_set_brief (SteadStrip *self,
                       const char *name,
                       const char *brief)
{
  Post *post;

  g_return_if_fail (STEAD_IS_STRIP (self));

  post = find_post (self, name);
  if (post == NULL)
    return;
  stead_ui_tell (GTK_LABEL (post->brief), brief);
}

void
stead_strip_select (SteadStrip *self,
                    const char *name)
{
  g_return_if_fail (STEAD_IS_STRIP (self));

  self->quiet = TRUE;
  for (guint i = 0; i < self->posts->len; i++)
    {
      Post *post = self->posts->pdata[i];

      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (post->button), g_strcmp0 (post->name, name) == 0);
    }
  self->quiet = FALSE;
}

const char *
stead_strip_get_selected (SteadStrip *self)
{
  g_return_val_if_fail (STEAD_IS_STRIP (self), NULL);

  for (guint i = 0; i < self->posts->len; i++)
    {
      Post *post = self->posts->pdata[i];

      if (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (post->button)))
        return post->name;
    }
  return NULL;
}

const char *
stead_strip_get_nth (SteadStrip *self,
                     guint       n)
{
  g_return_val_if_fail (STEAD_IS_STRIP (self), NULL);
  return n < self->posts->len ? ((Post *) self->posts->pdata[n])->name : NULL;
}
