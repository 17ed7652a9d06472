/* stead-class-pane.h - the people of the farm, one row each. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CLASS_PANE (stead_class_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadClassPane, stead_class_pane, STEAD, CLASS_PANE, SteadPane)

G_END_DECLS
