/* stead-best-use-handles.c - what can be turned of the best use.
 *
 * What was named and said of the one more thing stays, by product, while the window is open.
 */
#include "config.h"

#include "app/price/stead-best-use-handles.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/price/stead-handle.h"
#include "app/price/stead-view.h"
#include "app/stead-ui.h"

#define FIRST_OTHER 100
#define MOST_OTHER 500
#define MOST_OTHER_USE 20

struct _SteadBestUseHandles
{
  GtkWidget     parent_instance;

  SteadBestUse *answer;         /* (nullable) (transfer none) */
  GtkWidget    *box, *amounts, *products, *others, *name;
  SteadHandle  *more, *other;
  GPtrArray    *mosts;          /* of SteadHandle: of each product */
  guint         other_at;       /* which scarce thing of the answer it is */
  double        other_amount;
  GHashTable   *other_uses;     /* name of a product to double */
};

enum { TURNED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadBestUseHandles, stead_best_use_handles, GTK_TYPE_WIDGET)

/* A handle's place: of a scarce thing, or of a product and its least or most. */
typedef struct
{
  SteadBestUseHandles *self;
  guint                at;
  gboolean             most;
  GtkWidget           *expander;
} Place;

static SteadBestUseLine *
line_at (SteadBestUseHandles *self,
         guint                i)
{
  return self->answer->lines->pdata[i];
}

static SteadScarce *
scarce_at (SteadBestUseHandles *self,
           guint                k)
{
  return self->answer->scarce->pdata[k];
}

static void
turned (SteadBestUseHandles *self)
{
  g_signal_emit (self, signals[TURNED], 0);
}

static GtkWidget *
handle_of (SteadBestUseHandles *self,
           GtkWidget           *box,
           const char          *name,
           SteadHandleText      text,
           GCallback            turn,
           const Place         *place)
{
  Place *kept = g_memdup2 (place, sizeof *place);
  GtkWidget *handle = stead_handle_new (name, text, kept);

  kept->self = self;
  g_object_set_data_full (G_OBJECT (handle), "place", kept, g_free);
  g_signal_connect (handle, "turned", turn, kept);
  gtk_box_append (GTK_BOX (box), handle);
  return handle;
}

/* --- what there is ----------------------------------------------------------------------- */

static char *
amount_text (double   value,
             gpointer data)
{
  const Place *place = data;

  return place->self == NULL || place->self->answer == NULL ? g_strdup ("")
         : stead_scarce_amount (scarce_at (place->self, place->at), value);
}

static void
amount_cb (SteadHandle *handle,
           double       value,
           const Place *place)
{
  if (place->self->answer == NULL)
    return;
  scarce_at (place->self, place->at)->amount = value;
  if (place->at == place->self->other_at)
    place->self->other_amount = value;
  turned (place->self);
}

static double
step_of (const SteadScarce *scarce)
{
  return scarce->kind == STEAD_SCARCE_MINUTES ? 6 : stead_scarce_telling (scarce);
}

static void
fill_amounts (SteadBestUseHandles *self)
{
  for (guint k = 0; k < self->answer->scarce->len; k++)
    {
      const SteadScarce *scarce = scarce_at (self, k);
      double step = step_of (scarce), most = MAX (MAX (scarce->planned, scarce->amount / 2) * 2.5, step * 10);
      GtkWidget *handle;

      if (k == self->other_at)
        continue;
      handle = handle_of (self, self->amounts, scarce->name, amount_text, G_CALLBACK (amount_cb), &(Place) { .at = k });
      stead_handle_range (STEAD_HANDLE (handle), 0, ceil (most / step) * step, step);
      stead_handle_set (STEAD_HANDLE (handle), scarce->amount);
    }
}

/* --- what can be sold --------------------------------------------------------------------- */

static char *
units_text (double   value,
            gpointer data)
{
  const Place *place = data;

  return place->self == NULL || place->self->answer == NULL ? g_strdup ("")
         : stead_words_units (line_at (place->self, place->at)->pack, value);
}

/* "Eggs: 0 to 108 dozen" */
static void
show_product (const Place *place)
{
  const SteadBestUseLine *line = line_at (place->self, place->at);
  g_autofree char *least = stead_words_units (line->pack, line->least);
  g_autofree char *most = stead_words_units (line->pack, line->most);
  /* Translators: a range, its lowest and its highest value. */
  g_autofree char *text = g_strdup_printf (C_("range", "%s: %s to %s"), line->name, least, most);

  gtk_label_set_text (GTK_LABEL (gtk_expander_get_label_widget (GTK_EXPANDER (place->expander))), text);
  stead_ui_name (place->expander, text);
}

static void
bound_cb (SteadHandle *handle,
          double       value,
          const Place *place)
{
  SteadBestUseLine *line;

  if (place->self->answer == NULL)
    return;
  line = line_at (place->self, place->at);
  *(place->most ? &line->most : &line->least) = value;
  show_product (place);
  turned (place->self);
}

static GtkWidget *
add_bound (SteadBestUseHandles *self,
           GtkWidget           *box,
           GtkWidget           *expander,
           guint                at,
           gboolean             most)
{
  const SteadBestUseLine *line = line_at (self, at);
  /* Translators: handles of a product: "Eggs: at least". */
  g_autofree char *name = most ? g_strdup_printf (C_("of a product", "%s: at most"), line->name)
                               : g_strdup_printf (C_("of a product", "%s: at least"), line->name);
  GtkWidget *handle;

  handle = handle_of (self, box, name, units_text, G_CALLBACK (bound_cb), &(Place) { NULL, at, most, expander });
  stead_handle_range (STEAD_HANDLE (handle), 0, MAX (ceil (line->planned * 3), 10), 1);
  stead_handle_set (STEAD_HANDLE (handle), most ? line->most : line->least);
  return handle;
}

static GtkWidget *
make_expander (GtkWidget **out_box)
{
  GtkWidget *expander = gtk_expander_new (NULL), *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_expander_set_label_widget (GTK_EXPANDER (expander), label);
  *out_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  stead_ui_expander_set_child (expander, *out_box);
  return expander;
}

static void
fill_products (SteadBestUseHandles *self)
{
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      GtkWidget *box, *expander = make_expander (&box), *most;

      add_bound (self, box, expander, i, FALSE);
      most = add_bound (self, box, expander, i, TRUE);
      g_ptr_array_add (self->mosts, most);
      show_product (g_object_get_data (G_OBJECT (most), "place"));
      gtk_box_append (GTK_BOX (self->products), expander);
    }
}

static char *
share_text (double   value,
            gpointer data)
{
  return stead_words_percent (value / 100, 0);
}

static void
more_cb (SteadBestUseHandles *self,
         double               value)
{
  if (self->answer == NULL)
    return;
  stead_best_use_set_more (self->answer, value / 100);
  for (guint i = 0; i < self->mosts->len; i++)
    {
      stead_handle_set (self->mosts->pdata[i], line_at (self, i)->most);
      show_product (g_object_get_data (self->mosts->pdata[i], "place"));
    }
  turned (self);
}

/* --- something else ------------------------------------------------------------------------- */

static char *
number_text (double   value,
             gpointer data)
{
  return stead_number_format (value, 1);
}

static void
use_cb (SteadHandle *handle,
        double       value,
        const Place *place)
{
  SteadBestUseHandles *self = place->self;
  double *kept = g_new (double, 1);

  *kept = value;
  if (self->answer == NULL)
    {
      g_free (kept);
      return;
    }
  g_hash_table_insert (self->other_uses, g_strdup (line_at (self, place->at)->name), kept);
  stead_best_use_set_taken (self->answer, place->at, self->other_at, value);
  turned (self);
}

static void
fill_other (SteadBestUseHandles *self)
{
  SteadScarce other = { .kind = STEAD_SCARCE_PLAIN, .name = (char *) gtk_editable_get_text (GTK_EDITABLE (self->name)),
                        .amount = self->other_amount };
  GtkWidget *amount;

  self->other_at = stead_best_use_add_scarce (self->answer, &other);
  amount = handle_of (self, self->others, _("How much there is"), number_text, G_CALLBACK (amount_cb),
                      &(Place) { .at = self->other_at });
  stead_handle_range (STEAD_HANDLE (amount), 0, MOST_OTHER, 1);
  stead_handle_set (STEAD_HANDLE (amount), self->other_amount);
  for (guint i = 0; i < self->answer->lines->len; i++)
    {
      const double *kept = g_hash_table_lookup (self->other_uses, line_at (self, i)->name);
      /* Translators: a product; how much one of it takes of something scarce. */
      g_autofree char *name = g_strdup_printf (_("One of “%s” takes"), line_at (self, i)->name);
      GtkWidget *handle = handle_of (self, self->others, name, number_text, G_CALLBACK (use_cb), &(Place) { .at = i });

      stead_handle_range (STEAD_HANDLE (handle), 0, MOST_OTHER_USE, 0.5);
      stead_handle_set (STEAD_HANDLE (handle), kept != NULL ? *kept : 0);
      stead_best_use_set_taken (self->answer, i, self->other_at, kept != NULL ? *kept : 0);
    }
}

static void
name_cb (SteadBestUseHandles *self)
{
  if (self->answer == NULL)
    return;
  g_free (scarce_at (self, self->other_at)->name);
  scarce_at (self, self->other_at)->name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name)));
  turned (self);
}

/* --- widget ------------------------------------------------------------------------------------ */

static void
stead_best_use_handles_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_best_use_handles_parent_class)->dispose (object);
}

static void
stead_best_use_handles_finalize (GObject *object)
{
  SteadBestUseHandles *self = STEAD_BEST_USE_HANDLES (object);

  g_ptr_array_unref (self->mosts);
  g_hash_table_unref (self->other_uses);
  G_OBJECT_CLASS (stead_best_use_handles_parent_class)->finalize (object);
}

static void
stead_best_use_handles_class_init (SteadBestUseHandlesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_best_use_handles_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_best_use_handles_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
  signals[TURNED] = g_signal_new ("turned", STEAD_TYPE_BEST_USE_HANDLES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
}

static void
add_other (SteadBestUseHandles *self)
{
  GtkWidget *box, *expander = make_expander (&box);
  const char *title = _("Something else that is scarce");

  gtk_label_set_text (GTK_LABEL (gtk_expander_get_label_widget (GTK_EXPANDER (expander))), title);
  stead_ui_name (expander, title);
  gtk_box_append (GTK_BOX (box), stead_view_note (_("Room on the stall, crates, ice: name it, say how much there is, and what one of each product takes.")));
  self->name = gtk_entry_new ();
  gtk_entry_set_max_length (GTK_ENTRY (self->name), 60);
  gtk_editable_set_text (GTK_EDITABLE (self->name), _("Room on the stall"));
  stead_ui_name (self->name, _("What else is scarce"));
  g_signal_connect_swapped (self->name, "changed", G_CALLBACK (name_cb), self);
  gtk_box_append (GTK_BOX (box), self->name);
  self->others = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_box_append (GTK_BOX (box), self->others);
  gtk_box_append (GTK_BOX (self->box), expander);
}

static void
stead_best_use_handles_init (SteadBestUseHandles *self)
{
  self->mosts = g_ptr_array_new ();
  self->other_uses = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->other_amount = FIRST_OTHER;
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (self->box), stead_view_heading (_("What there is for the day")));
  self->amounts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_box_append (GTK_BOX (self->box), self->amounts);
  add_other (self);
  gtk_box_append (GTK_BOX (self->box), stead_view_heading (_("What can be sold")));
  self->more = STEAD_HANDLE (stead_handle_new (_("More than planned that could sell"), share_text, NULL));
  stead_handle_range (self->more, 0, 200, 5);
  stead_handle_set (self->more, 50);
  g_signal_connect_swapped (self->more, "turned", G_CALLBACK (more_cb), self);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->more));
  self->products = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_box_append (GTK_BOX (self->box), self->products);
}

GtkWidget *
stead_best_use_handles_new (void)
{
  return g_object_new (STEAD_TYPE_BEST_USE_HANDLES, NULL);
}

void
stead_best_use_handles_show (SteadBestUseHandles *self,
                             SteadBestUse        *answer)
{
  g_return_if_fail (STEAD_IS_BEST_USE_HANDLES (self));

  self->answer = NULL;
  g_ptr_array_set_size (self->mosts, 0);
  stead_view_clear (self->amounts);
  stead_view_clear (self->products);
  stead_view_clear (self->others);
  self->answer = answer;
  if (answer == NULL)
    return;
  fill_other (self);
  fill_amounts (self);
  fill_products (self);
  stead_handle_set (self->more, 50);
}
