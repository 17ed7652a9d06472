/* stead-why-box.c - a list of disclosures, each worked with the farm's own numbers.
 *
 * Rows are told apart by their titles, so that what a student has opened stays
 * open while its numbers move under the handles.
 */
#include "config.h"

#include "app/stead-why-box.h"

#include <glib/gi18n-lib.h>

struct _SteadWhyBox
{
  GtkWidget  parent_instance;

  GPtrArray *rows;   /* of Row, in the order shown */
};

typedef struct
{
  char      *title;
  GtkWidget *expander;
  GtkWidget *formula;
  GtkWidget *worked;
  GtkWidget *source;
} Row;

G_DEFINE_FINAL_TYPE (SteadWhyBox, stead_why_box, GTK_TYPE_WIDGET)

static void
row_free (gpointer data)
{
  Row *row = data;

  gtk_widget_unparent (row->expander);
  g_free (row->title);
  g_free (row);
}

static GtkWidget *
add_text (GtkWidget  *box,
          const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_focusable (label, FALSE);   /* text to read must not be a stop of the Tab key */
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static Row *
row_new (SteadWhyBox *self,
         const char  *title)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *text = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  row->title = g_strdup (title);
  row->expander = gtk_expander_new (title);
  gtk_widget_add_css_class (row->expander, "why");
  gtk_widget_add_css_class (text, "why-text");
  row->formula = add_text (text, "formula");
  row->worked = add_text (text, "worked");
  row->source = add_text (text, "soft");
  gtk_expander_set_child (GTK_EXPANDER (row->expander), text);
  gtk_widget_set_parent (row->expander, GTK_WIDGET (self));
  return row;
}

static void
show_text (GtkWidget  *label,
           const char *text)
{
  gtk_widget_set_visible (label, text != NULL && *text != '\0');
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
}

static void
row_show (Row            *row,
          const SteadWhy *why)
{
  g_autofree char *source = NULL;

  if (why->source != NULL)
    /* Translators: %s is the book or rule that a formula is from. */
    source = g_strdup_printf (_("Source: %s"), why->source);
  show_text (row->formula, why->formula);
  show_text (row->worked, why->worked);
  show_text (row->source, source);
}

/* The row with this title is moved to @index, and made if there is none. */
static Row *
row_at (SteadWhyBox *self,
        guint        index,
        const char  *title)
{
  Row *row = NULL;

  for (guint i = index; i < self->rows->len && row == NULL; i++)
    if (g_strcmp0 (((Row *) self->rows->pdata[i])->title, title) == 0)
      row = g_ptr_array_steal_index (self->rows, i);
  if (row == NULL)
    row = row_new (self, title);
  g_ptr_array_insert (self->rows, (int) index, row);
  gtk_widget_insert_after (row->expander, GTK_WIDGET (self),
                           index > 0 ? ((Row *) self->rows->pdata[index - 1])->expander : NULL);
  return row;
}

static void
stead_why_box_dispose (GObject *object)
{
  SteadWhyBox *self = STEAD_WHY_BOX (object);

  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_why_box_parent_class)->dispose (object);
}

static void
stead_why_box_class_init (SteadWhyBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_why_box_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "whybox");
}

static void
stead_why_box_init (SteadWhyBox *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 3);
  self->rows = g_ptr_array_new_with_free_func (row_free);
}

GtkWidget *
stead_why_box_new (void)
{
  return g_object_new (STEAD_TYPE_WHY_BOX, NULL);
}

void
stead_why_box_set (SteadWhyBox *self,
                   GPtrArray   *whys)
{
  guint n = 0;

  g_return_if_fail (STEAD_IS_WHY_BOX (self) && whys != NULL);

  for (guint i = 0; i < whys->len; i++)
    {
      const SteadWhy *why = whys->pdata[i];

      if (why != NULL)
        row_show (row_at (self, n++, why->title), why);
    }
  if (n < self->rows->len)
    g_ptr_array_remove_range (self->rows, n, self->rows->len - n);
}

gboolean
stead_why_box_open (SteadWhyBox *self,
                    const char  *title)
{
  g_return_val_if_fail (STEAD_IS_WHY_BOX (self), FALSE);

  for (guint i = 0; i < self->rows->len; i++)
    {
      Row *row = self->rows->pdata[i];

      if (g_strcmp0 (row->title, title) != 0)
        continue;
      gtk_expander_set_expanded (GTK_EXPANDER (row->expander), TRUE);
      gtk_widget_grab_focus (row->expander);
      return TRUE;
    }
  return FALSE;
}
