/* stead-sample-grid.c - single weights and lengths, typed one under the other or pasted. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app/raise/stead-sample-grid.h"

#include "answer/stead-answer-error.h"
#include "app/stead-ui.h"

#define FIRST_ROWS 10
#define MOST_ROWS 2000

#define G_PER_KG 1000
#define CM_PER_M 100

#define SHOWN_KEY "stead-shown"

typedef struct
{
  GtkWidget *number, *weight, *length;
} Row;

/* What was put into a cell: the text is shorter than the weight or length that it stands for. */
typedef struct
{
  char   *text;
  double  value;   /* g, or cm */
} Shown;

static void
shown_free (Shown *shown)
{
  g_free (shown->text);
  g_free (shown);
}

struct _SteadSampleGrid
{
  GtkWidget        parent_instance;

  const SteadUnit *weight_unit, *length_unit;
  gboolean         filling;
  GArray          *rows;         /* of Row */
  GtkWidget       *scrolled;
  GtkGrid         *grid;
  GtkLabel        *weight_head, *length_head;
};

G_DEFINE_FINAL_TYPE (SteadSampleGrid, stead_sample_grid, GTK_TYPE_WIDGET)

enum { SIGNAL_CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

static Row *
row_at (SteadSampleGrid *self,
        guint            index)
{
  return &g_array_index (self->rows, Row, index);
}

static const char *
text_in (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static gboolean
is_blank (GtkWidget *entry)
{
  g_autofree char *text = g_strstrip (g_strdup (text_in (entry)));

  return text[0] == '\0';
}

/* --- rows ------------------------------------------------------------------------------ */

static void changed_cb  (SteadSampleGrid *self, GtkWidget *entry);
static void activate_cb (SteadSampleGrid *self, GtkWidget *entry);

static GtkWidget *
add_cell (SteadSampleGrid *self,
          int              column,
          int              row,
          const char      *name)   /* of the column, for a screen reader */
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *number = stead_number_format (row, 0);
  /* Translators: a cell of a table: "Weight", the number of the row. */
  g_autofree char *label = g_strdup_printf (_("%s, fish %s"), name, number);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  gtk_entry_set_input_purpose (GTK_ENTRY (entry), GTK_INPUT_PURPOSE_NUMBER);
  stead_ui_name (entry, label);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  gtk_grid_attach (self->grid, entry, column, row, 1, 1);
  return entry;
}

static void
add_row (SteadSampleGrid *self)
{
  int at = (int) self->rows->len + 1;
  g_autofree char *number = stead_number_format (at, 0);
  Row row = { .number = gtk_label_new (number) };

  gtk_label_set_xalign (GTK_LABEL (row.number), 1);
  gtk_widget_add_css_class (row.number, "soft");
  gtk_widget_add_css_class (row.number, "figure");
  gtk_grid_attach (self->grid, row.number, 0, at, 1, 1);
  row.weight = add_cell (self, 1, at, _("Weight"));
  row.length = add_cell (self, 2, at, _("Length"));
  g_array_append_val (self->rows, row);
}

/* So many rows at least, one of them empty at the end. */
static void
make_rows (SteadSampleGrid *self,
           guint            n)
{
  while (self->rows->len < MIN (n, MOST_ROWS))
    add_row (self);
  if (self->rows->len < MOST_ROWS && !is_blank (row_at (self, self->rows->len - 1)->weight))
    add_row (self);
}

/* Row and column of an entry; %FALSE if it is none of them. */
static gboolean
find_cell (SteadSampleGrid *self,
           GtkWidget       *entry,
           guint           *out_row,
           gboolean        *out_is_length)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      Row *row = row_at (self, i);

      if (row->weight != entry && row->length != entry)
        continue;
      *out_row = i;
      *out_is_length = row->length == entry;
      return TRUE;
    }
  return FALSE;
}

/* --- pasting ----------------------------------------------------------------------------- */

static gboolean
is_table (const char *text)
{
  return strpbrk (text, "\t\r\n") != NULL;
}

/* One line of a pasted table, from a cell on. */
static void
spread_line (SteadSampleGrid *self,
             const char      *line,
             guint            at,
             gboolean         in_length)
{
  g_auto(GStrv) cells = g_strsplit (line, "\t", 0);
  Row *row = row_at (self, at);
  GtkWidget *entries[] = { row->weight, row->length };
  guint column = in_length ? 1 : 0;

  for (guint i = 0; cells[i] != NULL && column < G_N_ELEMENTS (entries); i++, column++)
    gtk_editable_set_text (GTK_EDITABLE (entries[column]), g_strstrip (cells[i]));
}

static void
spread_table (SteadSampleGrid *self,
              const char      *text,
              guint            at,
              gboolean         in_length)
{
  g_auto(GStrv) lines = g_strsplit_set (text, "\r\n", 0);
  guint n = 0;

  self->filling = TRUE;
  for (guint i = 0; lines[i] != NULL && at + n < MOST_ROWS; i++)
    {
      if (g_strstrip (lines[i])[0] == '\0')
        continue;
      make_rows (self, at + n + 1);
      spread_line (self, lines[i], at + n, in_length);
      n++;
    }
  self->filling = FALSE;
}

static void
changed_cb (SteadSampleGrid *self,
            GtkWidget       *entry)
{
  g_autofree char *text = g_strdup (text_in (entry));
  gboolean in_length;
  guint at;

  if (self->filling || !find_cell (self, entry, &at, &in_length))
    return;
  gtk_widget_remove_css_class (entry, "error");
  if (is_table (text))
    spread_table (self, text, at, in_length);
  make_rows (self, at + 2);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
activate_cb (SteadSampleGrid *self,
             GtkWidget       *entry)
{
  gboolean in_length;
  guint at;

  if (!find_cell (self, entry, &at, &in_length))
    return;
  make_rows (self, at + 2);
  if (at + 1 < self->rows->len)
    gtk_widget_grab_focus (row_at (self, at + 1)->weight);
}

/* --- reading and showing ------------------------------------------------------------------- */

/* Empty is NAN.  @value is in so many parts of the base unit: g of a kg, cm of a m. */
static gboolean
read_cell (GtkWidget        *entry,
           const SteadUnit  *unit,
           double            parts,
           double           *value,
           GError          **error)
{
  g_autofree char *text = g_strstrip (g_strdup (text_in (entry)));
  const Shown *shown = g_object_get_data (G_OBJECT (entry), SHOWN_KEY);
  double base;

  *value = NAN;
  if (text[0] == '\0')
    return TRUE;
  if (!stead_quantity_parse (text, unit->dimension, unit, &base, NULL, error))
    return FALSE;
  *value = shown != NULL && g_str_equal (text, shown->text) ? shown->value : base * parts;
  if (*value > 0)
    return TRUE;
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, _("Enter more than zero."));
  return FALSE;
}

static gboolean
read_row (SteadSampleGrid  *self,
          Row              *row,
          SteadWeighed     *out,
          GtkWidget       **out_wrong,
          GError          **error)
{
  *out_wrong = row->weight;
  if (!read_cell (row->weight, self->weight_unit, G_PER_KG, &out->weight_g, error))
    return FALSE;
  *out_wrong = row->length;
  if (!read_cell (row->length, self->length_unit, CM_PER_M, &out->length_cm, error))
    return FALSE;
  if (!isnan (out->weight_g) || isnan (out->length_cm))
    return TRUE;
  *out_wrong = row->weight;
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, _("Enter the weight that goes with this length."));
  return FALSE;
}

GArray *
stead_sample_grid_read (SteadSampleGrid  *self,
                        gboolean          loud,
                        GError          **error)
{
  g_autoptr(GArray) single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));

  g_return_val_if_fail (STEAD_IS_SAMPLE_GRID (self), NULL);

  for (guint i = 0; i < self->rows->len; i++)
    {
      SteadWeighed one;
      GtkWidget *wrong;

      if (read_row (self, row_at (self, i), &one, &wrong, error))
        {
          if (!isnan (one.weight_g))
            g_array_append_val (single, one);
          continue;
        }
      if (loud)
        {
          gtk_widget_add_css_class (wrong, "error");
          gtk_widget_grab_focus (wrong);
        }
      return NULL;
    }
  return g_steal_pointer (&single);
}

static void
show_cell (GtkWidget       *entry,
           double           value,
           double           parts,
           const SteadUnit *unit)
{
  /* Four figures tell a fish apart; trailing zeros are dropped by the format. */
  double number = stead_quantity_from_base (value / parts, unit);
  int digits = number >= 100 ? 1 : number >= 10 ? 2 : 3;
  g_autofree char *text = isnan (value) ? g_strdup ("") : stead_number_format (number, digits);
  Shown *shown = g_new0 (Shown, 1);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  *shown = (Shown) { g_steal_pointer (&text), value };
  g_object_set_data_full (G_OBJECT (entry), SHOWN_KEY, shown, (GDestroyNotify) shown_free);
}

/* The same number in another unit is another fish. */
static void
forget_shown (SteadSampleGrid *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      g_object_set_data (G_OBJECT (row_at (self, i)->weight), SHOWN_KEY, NULL);
      g_object_set_data (G_OBJECT (row_at (self, i)->length), SHOWN_KEY, NULL);
    }
}

void
stead_sample_grid_show (SteadSampleGrid *self,
                        const GArray    *single)
{
  guint n = single != NULL ? single->len : 0;

  g_return_if_fail (STEAD_IS_SAMPLE_GRID (self));

  self->filling = TRUE;
  make_rows (self, MAX (FIRST_ROWS, n + 1));
  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadWeighed none = { NAN, NAN };
      const SteadWeighed *one = i < n ? &g_array_index (single, SteadWeighed, i) : &none;

      show_cell (row_at (self, i)->weight, one->weight_g, G_PER_KG, self->weight_unit);
      show_cell (row_at (self, i)->length, one->length_cm, CM_PER_M, self->length_unit);
    }
  self->filling = FALSE;
}

void
stead_sample_grid_set_units (SteadSampleGrid *self,
                             const SteadUnit *weight,
                             const SteadUnit *length)
{
  g_autofree char *weight_text = NULL, *length_text = NULL;

  g_return_if_fail (STEAD_IS_SAMPLE_GRID (self) && weight != NULL && length != NULL);

  forget_shown (self);
  self->weight_unit = weight;
  self->length_unit = length;
  /* Translators: head of a column: the unit, "oz". */
  weight_text = g_strdup_printf (_("Weight, %s"), stead_unit_symbol (weight));
  length_text = g_strdup_printf (_("Length, %s"), stead_unit_symbol (length));
  gtk_label_set_text (self->weight_head, weight_text);
  gtk_label_set_text (self->length_head, length_text);
}

void
stead_sample_grid_focus (SteadSampleGrid *self)
{
  g_return_if_fail (STEAD_IS_SAMPLE_GRID (self));
  gtk_widget_grab_focus (row_at (self, 0)->weight);
}

/* --- the type ------------------------------------------------------------------------------- */

static void
stead_sample_grid_dispose (GObject *object)
{
  SteadSampleGrid *self = STEAD_SAMPLE_GRID (object);

  self->filling = TRUE;
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_sample_grid_parent_class)->dispose (object);
}

static void
stead_sample_grid_finalize (GObject *object)
{
  g_array_unref (STEAD_SAMPLE_GRID (object)->rows);
  G_OBJECT_CLASS (stead_sample_grid_parent_class)->finalize (object);
}

static void
stead_sample_grid_class_init (SteadSampleGridClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_sample_grid_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_sample_grid_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", STEAD_TYPE_SAMPLE_GRID, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static GtkLabel *
add_head (SteadSampleGrid *self,
          int              column)
{
  GtkWidget *head = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (head), 1);
  gtk_widget_add_css_class (head, "heading");
  gtk_grid_attach (self->grid, head, column, 0, 1, 1);
  return GTK_LABEL (head);
}

static void
stead_sample_grid_init (SteadSampleGrid *self)
{
  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  self->scrolled = gtk_scrolled_window_new ();
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_row_spacing (self->grid, 3);
  gtk_grid_set_column_spacing (self->grid, 9);
  self->weight_head = add_head (self, 1);
  self->length_head = add_head (self, 2);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scrolled), 190);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), GTK_WIDGET (self->grid));
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  stead_sample_grid_set_units (self, stead_unit_by_id ("g"), stead_unit_by_id ("cm"));
  make_rows (self, FIRST_ROWS);
}

GtkWidget *
stead_sample_grid_new (void)
{
  return g_object_new (STEAD_TYPE_SAMPLE_GRID, NULL);
}
