/* stead-rota-pane.h - who does what on which weekday; and who is trained for what. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ROTA_PANE (stead_rota_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadRotaPane, stead_rota_pane, STEAD, ROTA_PANE, SteadPane)

#define STEAD_TYPE_TRAINING_PANE (stead_training_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadTrainingPane, stead_training_pane, STEAD, TRAINING_PANE, SteadPane)

G_END_DECLS
