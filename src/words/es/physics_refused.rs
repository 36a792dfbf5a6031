//! What went wrong in a calculation, in Spanish.

use crate::physics::{Error, NoSolution, Quantity};
use crate::quantity::{System, Value, show};

pub(in crate::words) fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Altitude => "Altitud",
        Quantity::AtmosphericPressure => "Presión atmosférica",
        Quantity::DryBulb => "Bulbo seco",
        Quantity::WetBulb => "Bulbo húmedo",
        Quantity::AirTemperature => "Temperatura del aire",
        Quantity::RelativeHumidity => "Humedad relativa",
        Quantity::EnteringWater => "Agua de entrada",
        Quantity::LeavingWater => "Agua de salida",
        Quantity::Range => "Rango",
        Quantity::WaterAirRatio => "Relación de agua a aire",
        Quantity::MerkelNumber => "KaV/L",
        Quantity::CharacteristicExponent => "Exponente de la característica de torre",
        Quantity::FlowFraction => "Parte del caudal de diseño",
        Quantity::LoadFraction => "Parte del calor de diseño",
        Quantity::ThermometerError => "Incertidumbre de los termómetros",
        Quantity::WaterFlow | Quantity::WaterMassFlow => "Caudal de agua",
        Quantity::AirDensity => "Densidad del aire",
        Quantity::AirFlow => "Caudal de aire",
        Quantity::DriftFraction => "Arrastre",
        Quantity::Cycles => "Ciclos de concentración",
        Quantity::Conductivity => "Conductividad",
        Quantity::LossRate => "Pérdida de agua",
        Quantity::BasinDepth => "Profundidad de la pileta",
        Quantity::BasinArea => "Área de la pileta",
        Quantity::Level => "Nivel de agua",
        Quantity::Heat => "Calor rechazado",
        Quantity::WaterVolume => "Agua en el circuito",
        Quantity::LoopTemperature => "Temperatura del circuito",
        Quantity::Elapsed => "Tiempo",
        Quantity::SaturationTemperature => "Temperatura de saturación",
        Quantity::SaturationPressure => "Presión del refrigerante",
        Quantity::CondenserLeavingWater => "Agua que sale del condensador",
        Quantity::CondenserApproach => "Aproximación del condensador",
        Quantity::Ph => "pH",
        Quantity::SkinTemperature => "Agua en la pared más caliente",
        Quantity::DissolvedSolids => "Sólidos disueltos",
        Quantity::Calcium => "Calcio como CaCO3",
        Quantity::Alkalinity => "Alcalinidad como CaCO3",
        Quantity::SolidsFactor => "Sólidos entre conductividad",
        Quantity::Voltage => "Voltaje",
        Quantity::Frequency => "Frecuencia en Hz",
        Quantity::Resistance => "Resistencia",
        Quantity::Capacitance => "Capacitancia en farads",
        Quantity::Current => "Corriente",
        Quantity::ApparentPower => "VA de la bobina",
        Quantity::PowerFactor => "Factor de potencia",
        Quantity::InrushRatio => "Corriente de arranque entre la de sostén",
        Quantity::SeriesContacts => "Número de contactos en serie",
        Quantity::WireLength => "Largo del cable",
        Quantity::PartLeft => "Parte que deja la falla",
        Quantity::MeterAccuracy => "Exactitud del medidor",
        Quantity::MeterReading => "Lectura del medidor",
        Quantity::CircuitNodes => "Número de terminales",
        Quantity::ElectrodeSize => "Tamaño del sensor de nivel",
        Quantity::LiquidFraction => "Líquido en la espuma",
        Quantity::Margin => "Margen de seguridad",
        Quantity::FloorFall => "Caída del fondo de la pileta",
        Quantity::TableRows => "Número de renglones",
        Quantity::WaterTemperature => "Temperatura del agua",
        Quantity::WaterDensity => "Densidad del agua",
        Quantity::Viscosity => "Viscosidad del agua",
        Quantity::VapourPressure => "Presión de vapor del agua",
        Quantity::CriticalPressure => "Presión crítica",
        Quantity::InletPressure => "Presión antes de la válvula",
        Quantity::OutletPressure => "Presión después de la válvula",
        Quantity::PressureDrop => "Caída de presión",
        Quantity::MainsPressure => "Presión de la red",
        Quantity::FlowCoefficient => "Coeficiente de caudal Kv",
        Quantity::PressureRecovery => "Factor de recuperación de presión FL",
        Quantity::Bore => "Diámetro interior",
        Quantity::PipeLength => "Largo del tubo",
        Quantity::Roughness => "Rugosidad en metros",
        Quantity::Reynolds => "Número de Reynolds",
        Quantity::FrictionFactor => "Factor de fricción",
        Quantity::LossCoefficient => "Coeficiente de pérdida K",
        Quantity::DischargeCoefficient => "Coeficiente de descarga",
        Quantity::Lift => "Altura por subir",
        Quantity::Head => "Carga sobre la cresta",
        Quantity::WaterPrice => "Precio del agua",
        Quantity::WaterSideShare => "Parte de la resistencia del lado del agua",
        Quantity::WaterMass => "Agua en kilogramos",
        Quantity::MetalMass => "Metal en kilogramos",
        Quantity::MetalSpecificHeat => "Calor específico del metal",
        Quantity::Effectiveness => "Efectividad de la torre",
        Quantity::Approach => "Aproximación",
        Quantity::Band => "Diferencia con donde se asienta",
        Quantity::Machines => "Número de equipos",
        Quantity::TemperatureMargin => "Margen bajo el disparo",
    }
}

pub(in crate::words) fn no_solution(why: NoSolution) -> &'static str {
    match why {
        NoSolution::Pinch => {
            "Ninguna torre puede hacer esto: el aire quedaría tan caliente como el agua. Revise agua \
             de salida, bulbo húmedo y caudal de aire."
        }
        NoSolution::BeyondTower => {
            "Esta torre no puede con ese calor y agua bajo 140\u{a0}F. Revise rango y caudal de aire."
        }
        NoSolution::Freezing => {
            "El agua saldría congelándose. Con este clima el ventilador está apagado o en baja."
        }
        NoSolution::Boiling => "El agua hierve a esta temperatura y presión.",
        NoSolution::TooDry => "El aire está demasiado seco para tener punto de rocío.",
        NoSolution::Floating => {
            "Una parte del circuito no está unida a nada, o dos alimentaciones están unidas entre sí."
        }
        NoSolution::NoPressure => {
            "La red no puede subir el agua tan alto con estas pérdidas. Revise presión de la red y \
             altura."
        }
        NoSolution::MoreThanTheLine => {
            "La línea llena más rápido de lo que podría sin colador. Revise el caudal medido, el \
             diámetro y la presión de la red."
        }
        NoSolution::NeverReached => {
            "El nivel nunca llega ahí: se asienta antes o va para el otro lado."
        }
        NoSolution::StaysTooWarm => {
            "El agua se queda muy caliente con ese calor en esta torre. Deje equipos apagados o \
             restablezca primero la torre."
        }
    }
}

pub(in crate::words) fn error(error: &Error, system: System) -> String {
    match error {
        Error::OutOfRange {
            quantity: what,
            value,
            low,
            high,
        } => {
            let said = |si: f64| match what.kind() {
                Some(kind) => show(Value { kind, si }, system).to_string(),
                None => format!("{si:.3}"),
            };
            let (side, limit) = if value < low {
                ("por debajo de", low)
            } else {
                ("por encima de", high)
            };
            format!(
                "{} {} queda {side} {}, el fin de lo que este cálculo alcanza.",
                quantity(*what),
                said(*value),
                said(*limit)
            )
        }
        Error::NoSolution(why) => no_solution(*why).to_owned(),
    }
}
