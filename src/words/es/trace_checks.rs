//! Spanish: checks. Each has a title, what to do, and what healthy reads.

use crate::trace::Check;

/// Title, what to do, what healthy reads.
type Card = (&'static str, &'static str, &'static str);

pub(crate) fn title(check: Check) -> &'static str {
    card(check).0
}

pub(crate) fn how(check: Check) -> &'static str {
    card(check).1
}

pub(crate) fn healthy(check: Check) -> &'static str {
    card(check).2
}

#[rustfmt::skip]
fn card(check: Check) -> Card {
    use Check as K;
    match check {
        K::MachinesOut => ("Cuántos equipos están fuera", "Cuente los equipos fuera por alta. No restablezca todavía.", "Ninguno fuera; uno solo señala a ese equipo."),
        K::EnteringWater => ("Agua a los equipos", "Lea el agua que entra a los equipos y compárela con lo normal.", "A pocos grados de lo normal con este clima."),
        K::RangeWidth => ("Rango", "Lea el agua que sale de los equipos menos la que entra, con los equipos andando.", "Cerca del rango de diseño, menos a carga parcial."),
        K::MachineOwn => ("El equipo disparado en sí", "En este equipo: agua que entra y sale, válvula reguladora, alta contra agua que sale.", "La alta sigue al agua que sale como en sus vecinos."),
        K::MachineRange => ("Rango de este equipo", "Lea su agua de entrada y de salida, y la de un vecino con la misma carga.", "Más o menos igual que el de su vecino."),
        K::CondenserOverWater => ("Condensación sobre el agua que sale", "Pase la alta a temperatura de condensación; reste el agua que sale de este equipo.", "Cerca de lo que era limpio, unos 10\u{a0}F."),
        K::BranchValves => ("Válvulas manuales de este equipo", "Vea sus dos válvulas de agua. Gire cada una para comprobar.", "Las dos abiertas, manijas a lo largo del tubo."),
        K::BranchStrainer => ("Colador de este equipo", "Púrguelo a una cubeta o ábralo.", "Agua limpia de inmediato, malla limpia."),
        K::RegulatingByHand => ("Válvula reguladora a mano", "Ábrala con un desarmador bajo el resorte y vea la alta.", "La alta casi no se mueve: la válvula abría lo suficiente."),
        K::RegulatingTravel => ("Válvula reguladora en todo su recorrido", "Gire su ajuste despacio a los dos lados, luego regréselo. Vea si el agua la sigue.", "El agua la sigue suave, sin tirones ni topes."),
        K::MachineLoad => ("Qué carga lleva este equipo", "Vea producto, puertas y aire de entrada; compare con su placa.", "En su placa o menos."),
        K::TripHour => ("La hora en que se disparó", "De la bitácora y de quien estaba: clima, equipos andando, puertas abiertas, producto que entró.", "En el bulbo húmedo y la carga de la placa, o menos."),
        K::CutOutTest => ("Dónde dispara el presostato", "Suba la alta despacio estrangulando su agua, con manómetro, y anote el disparo.", "En el ajuste de la placa, con el error del manómetro."),
        K::ChargeLook => ("Subenfriamiento y carga", "Lea la temperatura de líquido contra la de condensación; compare la carga con la placa.", "Unos grados de subenfriamiento, no más."),
        K::StandingPressure => ("Presión en reposo", "Equipo apagado, agua corriendo hasta que entrada y salida coincidan. Compare la presión con esa temperatura.", "La presión de esa temperatura, no más."),
        K::TubesLook => ("Condensador abierto", "Aísle y drene. Quite una tapa y mire los tubos.", "Metal limpio, o una película que el cepillo quita a la primera."),
        K::PumpPressure => ("Manómetros de la bomba", "Vea los dos manómetros un minuto: quietos, oscilando o bajos.", "Las dos agujas quietas, donde suelen estar."),
        K::PumpCurrent => ("Corriente de la bomba", "Mida una fase con gancho y compare con la placa.", "Un poco menos que la placa."),
        K::TripMemory => ("Banderas de disparo y memoria de fallas", "Lea banderas, sobrecargas y memoria del variador de ventilador y bomba. No las borre.", "Nada se disparó desde la última visita."),
        K::PumpRotation => ("Para dónde gira la bomba", "Vea el eje mientras se detiene; compare con la flecha.", "Gira con la flecha."),
        K::PumpStrainerDrop => ("Caída en el colador de la bomba", "Lea los manómetros antes y después, con la bomba andando.", "Cerca de su cifra de limpio, 1 o 2\u{a0}psi."),
        K::ShutOffHead => ("Bomba contra válvula cerrada", "Equipos parados. Cierre su válvula de descarga, medio minuto a lo más, y lea ambos manómetros.", "La carga de su curva sin flujo, un décimo más o menos."),
        K::LoopValves => ("Válvulas comunes del circuito", "Siga el tubo principal de la bomba a la torre y de regreso. Vea cada vástago.", "Todas abiertas o en su balance marcado."),
        K::VentAir => ("Aire en los venteos", "Abra un poco los venteos altos con la bomba andando.", "Agua de inmediato, sin escupir."),
        K::BasinOnArrival => ("Pileta al llegar", "Mida del borde del rebosadero al agua antes de que alguien meta agua.", "Agua entre la marca de llamada y el rebosadero."),
        K::CallAsFound => ("Qué muestra el control de nivel", "Lea la lámpara o el relevador como está: pide, satisfecho o apagado. No toque nada.", "Pide con la pileta baja, satisfecho con ella llena."),
        K::LevelNow => ("Nivel de la pileta ahora", "Mida otra vez desde el borde del rebosadero, y de nuevo un minuto después.", "En su nivel de trabajo, o subiendo mientras llena."),
        K::ApproachToday => ("Aproximación", "Lea el agua que sale de la torre y el bulbo húmedo en la entrada de aire, a la sombra.", "Cerca de lo que da una torre limpia con este bulbo húmedo y carga."),
        K::FanAndAir => ("Ventilador y aire", "Ventilador con giro correcto y a velocidad, aire a través de un relleno limpio.", "Velocidad completa, aire parejo en toda la cara."),
        K::FanRuns => ("Cómo anda el ventilador", "Vea y oiga desde fuera de la guarda: completo, lento o quieto.", "Velocidad completa mientras el agua está caliente."),
        K::FanRotation => ("Para dónde gira el ventilador", "Véalo detenerse; compare con la flecha y sienta para dónde va el aire.", "Con la flecha, el aire para el lado correcto."),
        K::BeltLook => ("Banda del ventilador", "Ventilador bloqueado, guarda quitada: tensión, desgaste, poleas.", "Tensa, seca, alineada."),
        K::FanCommand => ("Qué se le pide al ventilador", "Lea termostato, sensor y variador; compare con el agua.", "Se le pide completo mientras el agua está caliente."),
        K::FillLook => ("El relleno", "Mire entre las persianas con lámpara, ventilador parado.", "Abierto, limpio, mojado por todos lados."),
        K::InletLook => ("Persianas y eliminadores", "Recorra con la vista toda la entrada y los eliminadores.", "Despejados, nada atorado, ninguno falta."),
        K::InletAir => ("Aire en la entrada", "Bulbo húmedo en la entrada, luego lejos y contra el viento.", "A 1 o 2\u{a0}F uno de otro."),
        K::SprayLook => ("Rociado", "Mire el rociado o la bandeja caliente, ventilador parado.", "Parejo sobre todo el relleno."),
        K::CellLook => ("Agua a cada celda", "Compare las bandejas calientes y las piletas de las celdas.", "Igual en cada una."),
        K::TowerBypassLook => ("Bypass de la torre", "Toque el tubo de bypass detrás de su válvula.", "No más caliente que el cuarto: no pasa nada."),
        K::SuctionLook => ("Salida de la pileta", "Desde fuera, vea malla, igualador y si hay remolino sobre la salida.", "Malla limpia, agua quieta."),
        K::WeatherAndLoad => ("Clima y carga", "Compare el bulbo húmedo de hoy y los equipos andando con la placa de la torre.", "En el bulbo húmedo y la carga de la placa, o menos."),
        K::FoamLook => ("Espuma en la pileta", "Mire el agua junto a la sonda con la bomba andando.", "Agua limpia alrededor de la sonda."),
        K::FoamJar => ("Agua de la pileta en un frasco", "Llene medio frasco, ciérrelo, agítelo diez veces, espere medio minuto.", "La espuma se fue."),
        K::WaterLoss => ("Agua que se va", "Vea purga, drenaje, rebosadero, sello de la bomba y los tubos de abajo.", "Purga solo cuando se pide, y nada más corriendo."),
        K::BleedLook => ("Purga sin que la pidan", "Vea la salida de la purga con su control apagado.", "No corre nada."),
        K::BleedSettings => ("Ajustes de la purga", "Lea punto de ajuste, diferencial y tiempo; compare su sonda con un medidor de mano.", "Como los dejó el tratador de agua."),
        K::OverflowLook => ("Rebosadero", "¿Se va agua, y está el borde por encima del nivel de paro?", "Seco, y por encima del nivel de paro."),
        K::DrainLook => ("Drenaje", "Vea la salida del drenaje.", "Seca."),
        K::LevelHold => ("Nivel con el llenado cerrado", "Cierre el llenado y la purga. Mida, espere diez minutos, mida otra vez.", "Baja no más de lo que se evapora."),
        K::PumpStopRise => ("Nivel al parar la bomba", "Con permiso del dueño pare la bomba y vigile la pileta.", "Sube un poco y queda bajo el rebosadero."),
        K::Conductivity => ("Conductividad", "Medidor de mano en la pileta; compare con el punto de ajuste.", "En el punto de ajuste, un décimo más o menos."),
        K::ControlVoltage => ("Voltaje en el control de nivel", "Compruebe el medidor y lea la alimentación del control. Póngale carga o use baja impedancia.", "El nominal, no más de 15 por ciento abajo."),
        K::DisconnectLook => ("Desconectador", "Vea la manija y si hay etiqueta. No conecte uno etiquetado.", "Conectado, sin etiqueta."),
        K::PanelSupply => ("Voltaje al transformador", "Compruebe el medidor y lea el lado de línea con baja impedancia.", "El voltaje del edificio."),
        K::TransformerOutput => ("Voltaje del transformador", "Compruebe el medidor y lea el lado de control con carga.", "El nominal, no más de 15 por ciento abajo."),
        K::FuseCheck => ("Fusible de control", "Voltaje entre sus extremos con energía, o continuidad con él afuera.", "Nada entre sus extremos; continuidad."),
        K::CallMark => ("Dónde pide", "Mida el ajuste de varilla o flotador contra la marca de llamada y la succión de la bomba.", "En la marca, bien arriba de la succión."),
        K::ProbeDried => ("Sacar, limpiar y secar la sonda", "Levante la sonda del agua, limpie y seque varillas y portaelectrodos, y vea si pide.", "Una sonda seca pide agua en segundos."),
        K::WiresOffHolder => ("Cables sueltos en el portaelectrodos", "Alimentación fuera, cables sueltos del portaelectrodos y separados, alimentación puesta: ¿pide?", "Pide: el cable está limpio."),
        K::HolderCap => ("Tapa de la sonda", "Alimentación fuera. Abra la tapa y vea las terminales.", "Secas, brillantes, sello entero."),
        K::HolderWetted => ("Portaelectrodos mojado a propósito", "Moje con agua de la pileta el portaelectrodos que se ve limpio, deje gotear un minuto: ¿vuelve a pedir?", "Vuelve a pedir dentro del minuto."),
        K::ProbeFilm => ("Resistencia del portaelectrodos seco", "Alimentación fuera, sonda afuera y seca, cables sueltos: lea entre varillas, luego cruce las puntas.", "Más de 1\u{a0}megohm. Menos de 100\u{a0}kohm es película o humedad."),
        K::TerminalsDried => ("Soporte con terminales secas", "Sin tensión, cables sueltos: seque las terminales bajo la tapa, deje el soporte, lea de varilla a varilla.", "Más de 1\u{a0}megohm: era humedad. Aún baja: película."),
        K::FloatByHand => ("Flotador a mano", "Desde fuera de la pileta empújelo abajo, luego levántelo.", "Abajo: llena. Arriba: cierra. Libre en medio."),
        K::FloatLook => ("Flotador afuera", "Busque lama, sarro, un brazo doblado; agítelo por si tiene agua.", "Limpio, ligero, libre."),
        K::LevelSignal => ("Señal de nivel contra la cinta", "Lea la señal en el controlador y la cinta al mismo tiempo.", "A menos de media pulgada una de otra."),
        K::StillWellLook => ("Tubo tranquilizador", "Enjuague el tubo tranquilizador o de sensado y vea su nivel.", "Sigue a la pileta de inmediato."),
        K::Substitution => ("Resistencia en lugar de la sonda", "Alimentación fuera, cables de la sonda sueltos. Ponga 1\u{a0}kohm por mojado, abierto por seco; vea la salida.", "Salida apagada con la resistencia puesta, encendida sin ella."),
        K::RelayTap => ("Golpecitos al relevador", "Pidiendo, con medidor en la salida: golpee su caja con un mango aislado.", "La salida no parpadea."),
        K::CycleCall => ("Llamado diez veces seguidas", "Haga que el control pida y pare diez veces. Cuente jalones y caudales.", "Diez jalones, diez veces caudal completo."),
        K::ContactDrop => ("Entre el contacto de salida", "Con el control pidiendo, lea entre su contacto de salida, circuito completo.", "Casi nada: está cerrado."),
        K::OutputVoltage => ("Voltaje en la salida", "Con el control pidiendo, lea de la terminal de salida al retorno.", "El nominal."),
        K::Joints => ("Uniones hacia la solenoide", "Alimentación fuera. Jale cada cable, busque puntas verdes o quemadas.", "Apretadas y brillantes."),
        K::CoilVoltage => ("Voltaje en la bobina", "Con el control pidiendo, lea entre la bobina con carga.", "El nominal, no más de 15 por ciento abajo, en la bobina misma."),
        K::CoilCurrent => ("Corriente de la bobina", "Con el control pidiendo, ponga el gancho en un cable de la bobina.", "VA entre volts de su placa."),
        K::CoilResistance => ("Resistencia de la bobina", "Alimentación fuera, un cable suelto: lea la bobina.", "La cifra de su placa; nunca abierta, nunca casi cero."),
        K::CoilPull => ("Si la bobina jala", "Con el control pidiendo, sienta si jala con una hoja de acero en la tuerca; oiga el zumbido.", "La hoja se pega, zumba leve, la bobina se entibia."),
        K::FlowOnCall => ("Caudal mientras pide", "Con el control pidiendo, oiga en la válvula y vea la salida.", "Caudal completo en segundos desde que pide."),
        K::FillStops => ("Si el llenado para", "Con la pileta llena o el control satisfecho, vea la salida.", "Seca en segundos."),
        K::ToldToShut => ("Válvula mandada a cerrar en la bobina", "Sin tensión, un cable de la bobina suelto y aislado (abierta sin tensión: energícela): ¿se corta el agua?", "Se corta en segundos."),
        K::ForceValve => ("Abrir el llenado a mano", "Use el vástago manual o el bypass. Compare con el caudal completo normal.", "Caudal completo de inmediato."),
        K::ValveArrow => ("Flecha de la válvula solenoide", "Busque la flecha fundida en el cuerpo.", "Con el flujo."),
        K::ValveStrip => ("Válvula solenoide desarmada", "Aislada y drenada: vea orificio piloto, diafragma, asiento, resorte; ¿se traba el émbolo?", "Orificio limpio, diafragma entero, émbolo libre."),
        K::DiaphragmLook => ("Diafragma a contraluz", "Bonete afuera: estírelo con cuidado frente a una lámpara, vea su ceja.", "No pasa luz, la ceja entera."),
        K::Differential => ("Presión a través de la solenoide", "Manómetro de antes menos el de después, válvula pasando. Compare con el mínimo de su placa.", "Por encima del mínimo de la placa."),
        K::HandValves => ("Válvulas manuales", "Siga la línea de la toma a la pileta. Gire cada una para comprobar.", "Todas abiertas, manijas a lo largo del tubo."),
        K::StrainerBlowOff => ("Purgar el colador", "Abra la purga a una cubeta y vea qué sale.", "Un chorro fuerte y limpio tras la primera basura."),
        K::PressureAtValve => ("Presión antes de la solenoide", "Léala en la válvula mientras debería pasar agua.", "Cerca de la de la red, 15\u{a0}psi o más."),
        K::LineCold => ("Línea de reposición a la intemperie", "Toque y mire el tramo exterior por si hay hielo.", "Sin escarcha, cable calefactor tibio en heladas."),
        K::PressureAfterReducer => ("Presión después de la reductora", "Lea el manómetro de atrás con el llenado corriendo.", "En su ajuste, sin caerse."),
        K::BackflowLook => ("Preventor de reflujo", "Vea el puerto de alivio y los manómetros de cada lado.", "Puerto seco, su caída normal."),
        K::MainsPressure => ("Presión de la red", "Lea el manómetro con el llenado corriendo, luego cerrado.", "Cerca de lo normal, sin caerse mientras llena."),
        K::MachineRecorder => ("Registrador en un equipo", "Registre alta, agua de entrada y salida y corriente; vuelva cuando se haya disparado otra vez.", "Se dispara solo en su ajuste, rango normal."),
        K::LevelRecorder => ("Registrador en el llenado", "Registre nivel, llamada y voltaje de bobina; vuelva cuando haya pasado otra vez.", "Nivel sostenido, una llamada por cada bajada."),
        K::LoopRecorder => ("Registrador en el circuito de agua", "Registre corriente de bomba y ventilador, el mando del ventilador y las dos temperaturas del agua; vuelva cuando haya pasado otra vez.", "Todo normal hasta el disparo."),
        K::Restart => ("Arranque de los equipos", "Restablezca y arranque uno por uno los equipos que estaban parados, con su carga. Vea cada alta hasta que se quede quieta, un cuarto de hora.", "Cada alta llega a la de siempre y ahí se queda."),
        K::CoilInRecord => ("Bobina en el registro", "En el registro del nivel: el voltaje de la bobina mientras bajaba el nivel.", "Nominal, no más de 15 por ciento abajo."),
        K::PumpInRecord => ("Bomba en el registro", "En el registro del circuito: la corriente de la bomba cuando pasó.", "Como antes de que pasara."),
        K::FanInRecord => ("Ventilador en el registro", "En el registro del circuito: la corriente y el mando del ventilador cuando pasó.", "Anduvo como se mandó con el agua tibia."),
        K::LoadInRecord => ("Carga en el registro", "En el registro de este equipo: corriente y rango al dispararse, contra la placa.", "En su placa o menos."),
        K::RefillTest => ("Prueba de llenado", "Baje el nivel por debajo de la marca de llamada y tome el tiempo hasta la marca de paro, sin meter mano.", "Pide en la marca, llena en su tiempo normal, para solo."),
    }
}
