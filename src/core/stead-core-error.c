/* stead-core-error.c - the quark of the layer's error domain. */
#include "config.h"

#include "core/stead-core-error.h"

G_DEFINE_QUARK (stead-core-error-quark, stead_core_error)
