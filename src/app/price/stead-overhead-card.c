/* stead-overhead-card.c - by what overhead is charged, and how much of it there is.
 *
 * Closed in an expander: most farms choose once a year.
 */
#include "config.h"

#include "app/price/stead-overhead-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/price/stead-view.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-overhead-repo.h"

#define WEEKS_PER_YEAR 52.0

struct _SteadOverheadCard
{
  GtkWidget   parent_instance;

  SteadDesk  *desk;      /* not owned: the window outlives its pages */
  GtkWidget  *base, *button, *error;
  SteadField *cents, *hours, *area, *money;
};

G_DEFINE_FINAL_TYPE (SteadOverheadCard, stead_overhead_card, GTK_TYPE_WIDGET)

static SteadOverheadBase
base_of (SteadOverheadCard *self)
{
  return (SteadOverheadBase) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->base));
}

static void
show_fields (SteadOverheadCard *self)
{
  SteadOverheadBase base = base_of (self);

  gtk_widget_set_visible (GTK_WIDGET (self->cents), base != STEAD_OVERHEAD_NONE);
  gtk_widget_set_visible (GTK_WIDGET (self->hours), base == STEAD_OVERHEAD_HOURS);
  gtk_widget_set_visible (GTK_WIDGET (self->area), base == STEAD_OVERHEAD_SPACE);
  gtk_widget_set_visible (GTK_WIDGET (self->money), base == STEAD_OVERHEAD_MONEY);
}

static void
show_error (SteadOverheadCard *self,
            const GError      *error)
{
  gtk_label_set_text (GTK_LABEL (self->error), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->error, error != NULL);
}

void
stead_overhead_card_load (SteadOverheadCard *self)
{
  const SteadFarm *farm;
  SteadOverhead overhead;
  g_autoptr(GError) error = NULL;

  g_return_if_fail (STEAD_IS_OVERHEAD_CARD (self));
  farm = stead_desk_get_farm (self->desk);
  if (farm == NULL || !stead_overhead_repo_get (stead_desk_get_store (self->desk), &overhead, &error))
    {
      show_error (self, error);
      return;
    }
  show_error (self, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->base), overhead.base);
  stead_field_set_currency (self->cents, farm->currency);
  stead_field_set_currency (self->money, farm->currency);
  stead_field_set_unit (self->area, stead_unit_by_id (farm->units == STEAD_UNITS_US ? "sqft" : "m2"));
  if (overhead.base != STEAD_OVERHEAD_NONE)
    stead_field_show_money (self->cents, overhead.planned_cents);
  if (overhead.base == STEAD_OVERHEAD_HOURS)
    stead_field_show_number (self->hours, overhead.planned_base);
  if (overhead.base == STEAD_OVERHEAD_SPACE)
    stead_field_show_quantity (self->area, overhead.planned_base / WEEKS_PER_YEAR);
  if (overhead.base == STEAD_OVERHEAD_MONEY)
    stead_field_show_money (self->money, (gint64) llround (overhead.planned_base));
  show_fields (self);
}

/* --- what the person does ---------------------------------------------------------------- */

static gboolean
read_fields (SteadOverheadCard *self,
             SteadOverhead     *out)
{
  double value = 0;
  gint64 cents = 0;

  *out = (SteadOverhead) { base_of (self), 0, 0 };
  if (out->base == STEAD_OVERHEAD_NONE)
    return TRUE;
  if (!stead_field_read_money (self->cents, -1, &out->planned_cents))
    return FALSE;
  if (out->base == STEAD_OVERHEAD_HOURS && !stead_field_read_number (self->hours, 0, &value))
    return FALSE;
  if (out->base == STEAD_OVERHEAD_SPACE && !stead_field_read_quantity (self->area, 0, &value))
    return FALSE;
  if (out->base == STEAD_OVERHEAD_MONEY && !stead_field_read_money (self->money, 0, &cents))
    return FALSE;
  out->planned_base = out->base == STEAD_OVERHEAD_SPACE ? value * WEEKS_PER_YEAR
                      : out->base == STEAD_OVERHEAD_MONEY ? (double) cents : value;
  return TRUE;
}

static gboolean
use_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  return stead_overhead_repo_set (store, data, error);
}

static void
use_cb (SteadOverheadCard *self)
{
  SteadOverhead overhead;
  g_autoptr(GError) error = NULL;

  if (!read_fields (self, &overhead))
    return;
  /* Translators: the step that Undo names. */
  (void) !stead_desk_act (self->desk, _("the overhead rate"), use_act, &overhead, &error);
  show_error (self, error);
}

/* --- widget ---------------------------------------------------------------------------------- */

static void
stead_overhead_card_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_overhead_card_parent_class)->dispose (object);
}

static void
stead_overhead_card_class_init (SteadOverheadCardClass *klass)
{
  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_overhead_card_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static SteadField *
add_field (GtkWidget      *box,
           const char     *label,
           SteadFieldKind  kind)
{
  GtkWidget *field = stead_field_new (label, kind);

  g_object_set (field, "required", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), field);
  return STEAD_FIELD (field);
}

static void
stead_overhead_card_init (SteadOverheadCard *self)
{
  const char *bases[] = { _("Not charged"), _("By hours of work"), _("By space and weeks"), _("By other cost"), NULL };
  GtkWidget *expander = gtk_expander_new (_("Overhead: by what it is charged")), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (box), stead_view_note (_("What belongs to no one batch, such as insurance or power, is planned for a year "
                                                    "and spread by one rate over all that is made.")));
  self->base = gtk_drop_down_new_from_strings (bases);
  stead_ui_name (self->base, _("How overhead is charged"));
  stead_ui_name (gtk_widget_get_first_child (self->base), _("How overhead is charged"));
  g_signal_connect_swapped (self->base, "notify::selected", G_CALLBACK (show_fields), self);
  gtk_box_append (GTK_BOX (box), self->base);
  self->cents = add_field (box, _("Overhead of a year"), STEAD_FIELD_MONEY);
  self->hours = add_field (box, _("Hours of work in a year"), STEAD_FIELD_NUMBER);
  self->area = add_field (box, _("Space in use all year"), STEAD_FIELD_QUANTITY);
  self->money = add_field (box, _("Other cost of a year"), STEAD_FIELD_MONEY);
  self->button = gtk_button_new_with_label (_("Use this rate"));
  g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (use_cb), self);
  gtk_box_append (GTK_BOX (box), self->button);
  self->error = stead_view_note (NULL);
  gtk_widget_add_css_class (self->error, "message");
  gtk_widget_set_visible (self->error, FALSE);
  gtk_box_append (GTK_BOX (box), self->error);
  stead_ui_name (expander, _("Overhead: by what it is charged"));
  stead_ui_expander_set_child (expander, box);
  gtk_widget_set_parent (expander, GTK_WIDGET (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "card");
  show_fields (self);
}

GtkWidget *
stead_overhead_card_new (SteadDesk *desk)
{
  SteadOverheadCard *self;

  g_return_val_if_fail (STEAD_IS_DESK (desk), NULL);
  self = g_object_new (STEAD_TYPE_OVERHEAD_CARD, NULL);
  self->desk = desk;
  return GTK_WIDGET (self);
}
