/* stead-show-page.c - the place Show: who worked, what was learned, and what goes out.
 *
 * Invariant: a view is made when it is first chosen, and refreshed only while it is shown.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-pane.h"
#include "app/show/stead-class-pane.h"
#include "app/show/stead-events-pane.h"
#include "app/show/stead-export-pane.h"
#include "app/show/stead-hours-pane.h"
#include "app/show/stead-journal-pane.h"
#include "app/show/stead-results-pane.h"
#include "app/show/stead-rota-pane.h"
#include "app/show/stead-packets-pane.h"
#include "app/show/stead-show-page.h"
#include "app/show/stead-skills-pane.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"

/* The views, in the order of their chips.  A new one is a line here. */
typedef struct
{
  const char *label;               /* of the chip */
  GType     (*pane_type) (void);   /* a SteadPane */
  SteadTarget target;              /* what leads here; STEAD_TARGET_NONE: only the chip */
} View;

static const View views[] = {
  { NC_("view of Show", "Class"), stead_class_pane_get_type, STEAD_TARGET_PERSON },
  { NC_("view of Show", "Hours"), stead_hours_pane_get_type, STEAD_TARGET_HOURS },
  { NC_("view of Show", "Rota"), stead_rota_pane_get_type, STEAD_TARGET_NONE },
  { NC_("view of Show", "Trainings"), stead_training_pane_get_type, STEAD_TARGET_NONE },
  { NC_("view of Show", "Results"), stead_results_pane_get_type, STEAD_TARGET_NONE },
  { NC_("view of Show", "Skills"), stead_skills_pane_get_type, STEAD_TARGET_SKILLS },
  { NC_("view of Show", "Journal"), stead_journal_pane_get_type, STEAD_TARGET_JOURNAL },
  { NC_("view of Show", "Events"), stead_events_pane_get_type, STEAD_TARGET_EVENT },
  { NC_("view of Show", "Packets"), stead_packets_pane_get_type, STEAD_TARGET_PACKET },
  { NC_("view of Show", "Exports"), stead_export_pane_get_type, STEAD_TARGET_NONE },
};

struct _SteadShowPage
{
  SteadPage   parent_instance;

  SteadChips *chips;
  GtkStack   *stack;
  SteadPane  *panes[G_N_ELEMENTS (views)];   /* (nullable): children of the stack */
};

G_DEFINE_FINAL_TYPE (SteadShowPage, stead_show_page, STEAD_TYPE_PAGE)

/* Chip ids count from 1. */
static SteadPane *
pane_of (SteadShowPage *self,
         gsize          view)
{
  if (self->panes[view] == NULL)
    {
      self->panes[view] = g_object_new (views[view].pane_type (), NULL);
      gtk_stack_add_child (self->stack, GTK_WIDGET (self->panes[view]));
    }
  return self->panes[view];
}

static void
stead_show_page_refresh (SteadPage *page)
{
  SteadShowPage *self = STEAD_SHOW_PAGE (page);
  SteadPane *pane = pane_of (self, stead_chips_get (self->chips) - 1);

  stead_pane_refresh (pane, stead_page_get_desk (page));
  gtk_stack_set_visible_child (self->stack, GTK_WIDGET (pane));
}

static void
chosen_cb (SteadShowPage *self,
           gint64         view)
{
  stead_page_invalidate (STEAD_PAGE (self));
}

static void
stead_show_page_show (SteadPage   *page,
                      SteadTarget  target,
                      gint64       id)
{
  SteadShowPage *self = STEAD_SHOW_PAGE (page);

  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    if (target != STEAD_TARGET_NONE && views[i].target == target)
      {
        stead_chips_choose (self->chips, (gint64) i + 1);
        stead_pane_show (pane_of (self, i), target, id);
      }
  stead_page_invalidate (page);
}

static void
stead_show_page_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_SHOW_PAGE);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_show_page_parent_class)->dispose (object);
}

static void
stead_show_page_class_init (SteadShowPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  G_OBJECT_CLASS (klass)->dispose = stead_show_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_show_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_show_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("show/stead-show-page.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadShowPage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadShowPage, stack);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
}

static void
stead_show_page_init (SteadShowPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->stack);
  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    stead_chips_append (self->chips, (gint64) i + 1, g_dpgettext2 (GETTEXT_PACKAGE, "view of Show", views[i].label));
  stead_chips_choose (self->chips, 1);
}
